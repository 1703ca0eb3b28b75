namespace Viscolog.Core.Pots;

/// <summary>A reading and where it stands.</summary>
/// <param name="Entry">The place of its entry in the run, from 0.</param>
/// <param name="Reading">The reading.</param>
public sealed record PlacedReading(int Entry, Reading Reading);
