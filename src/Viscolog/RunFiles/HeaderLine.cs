using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>One header line as it stands in the file.</summary>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Key">Its key; trimmed, not empty.</param>
/// <param name="Value">Its value; trimmed.</param>
internal sealed record HeaderLine(int Line, string Key, string Value)
{
    /// <summary>Where it stands.</summary>
    public Place Place => new(Line, null, OneLine.Quoted($"{Key}: {Value}"));
}
