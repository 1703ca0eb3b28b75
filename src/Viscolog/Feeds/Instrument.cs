using Viscolog.Core.Checking;

namespace Viscolog.Feeds;

/// <summary>An instrument to listen to.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Source">Where its lines come from.</param>
/// <param name="Pattern">How they are read.</param>
internal sealed record Instrument(string Name, LineSource Source, LinePattern Pattern)
{
    /// <summary>
    /// The instrument of a text: the name of one that the log knows, or a source with a pattern given beside it; null with the reason.
    /// </summary>
    /// <param name="text">A name, a source, or both as NAME=SOURCE.</param>
    /// <param name="reads">A pattern; null for that of the log.</param>
    /// <param name="known">The log's materials.</param>
    /// <param name="error">The reason.</param>
    public static Instrument? Read(string text, string? reads, IEnumerable<Material> known, out string? error)
    {
        var instruments = known.OfType<Material.OfInstrument>().Where(i => !i.IsRetired).ToList();
        var mark = text.IndexOf('=', StringComparison.Ordinal);
        var (name, place) = mark < 0 ? (text.Trim(), (string?)null) : (text[..mark].Trim(), text[(mark + 1)..].Trim());
        var kept = instruments.Find(i => string.Equals(i.Name, name, StringComparison.OrdinalIgnoreCase));
        if (kept is null && reads is null)
        {
            error = instruments.Count == 0
                ? $"the log knows no instrument '{name}'; say how its lines are read with --reads, or add it on the list of materials"
                : $"the log knows no instrument '{name}'; it knows {string.Join(", ", instruments.Select(i => i.Name))}";
            return null;
        }

        if ((place ?? kept?.Source ?? (kept is null ? name : null)) is not { } from)
        {
            error = $"say where the lines of '{name}' come from: '{name}=serial:PORT', for one";
            return null;
        }

        return LineSource.Read(from, out error) is { } source && LinePattern.Read(reads ?? kept!.Reads, out error) is { } pattern
            ? new(kept?.Name ?? (mark < 0 ? source.Name : name), source, pattern)
            : null;
    }
}
