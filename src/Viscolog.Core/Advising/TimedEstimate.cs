using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What is expected after standing for a time.</summary>
/// <param name="Wait">Time since stirring ended.</param>
/// <param name="Value">The expected value.</param>
public sealed record TimedEstimate(TimeSpan Wait, Estimate Value);
