namespace Viscolog.Store;

/// <summary>How far a long job has come.</summary>
/// <param name="Doing">What is being done, such as "checking the journal".</param>
/// <param name="Done">How much of it.</param>
/// <param name="Total">Out of how much; 0 where nobody knows.</param>
internal readonly record struct LogProgress(string Doing, long Done, long Total);
