using Viscolog.Output;

namespace Viscolog.Tui.Papers;

/// <summary>Writes a paper to a path, over what is there or not.</summary>
internal delegate Outcome<string> PaperWriter(string path, bool replace);
