namespace Viscolog.RunFiles;

/// <summary>A header key that the format does not know; kept for the next export.</summary>
internal sealed record UnknownKey(string Key, string Value);
