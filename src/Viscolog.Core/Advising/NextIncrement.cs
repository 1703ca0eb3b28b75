using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>The advised addition as a plot shows it: an arrow from where the pot is to where it is expected to be.</summary>
/// <param name="From">The dose now.</param>
/// <param name="Body">The body now.</param>
/// <param name="To">The dose after the addition.</param>
/// <param name="Expected">The body expected after it.</param>
public sealed record NextIncrement(Dose From, Viscosity Body, Dose To, Estimate Expected);
