namespace Viscolog.RunFiles;

/// <summary>A <c>key=value</c> pair of a thickener line that the format does not know; kept for the next export.</summary>
internal sealed record UnknownTrait(string Thickener, string Key, string Value);
