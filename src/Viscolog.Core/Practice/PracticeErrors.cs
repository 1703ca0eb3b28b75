namespace Viscolog.Core.Practice;

/// <summary>How a practice pot and its user err.</summary>
/// <param name="ReadingSd">Standard deviation of ln of a reading.</param>
/// <param name="DosingSd">Relative standard deviation of a dose.</param>
/// <param name="TimeConstantSeconds">τ of the build-up in s; 0 for a pot that is settled at once.</param>
public sealed record PracticeErrors(double ReadingSd, double DosingSd, double TimeConstantSeconds);
