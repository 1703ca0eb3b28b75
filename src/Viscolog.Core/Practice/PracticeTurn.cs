namespace Viscolog.Core.Practice;

/// <summary>What came of a move.</summary>
/// <param name="Session">The game after it; as before where it was refused.</param>
/// <param name="Refusal">Why it can't be done, and what to do; null where it was done.</param>
public sealed record PracticeTurn(PracticeSession Session, string? Refusal);
