using Viscolog.Output;

namespace Viscolog.Tui.Papers;

/// <summary>Writes a paper to a path, over what is there or not.</summary>
internal delegate Outcome<string> PaperWriter(string path, bool replace);

/// <summary>A paper that was asked for.</summary>
/// <param name="Name">What it is, as its file is called.</param>
/// <param name="Write">Writes it.</param>
internal sealed record AskedPaper(string Name, PaperWriter Write);
