using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>One reading of a rotational viscometer on the way to a flow curve.</summary>
/// <param name="RevolutionsPerMinute">Speed in 1/min; above 0.</param>
/// <param name="OfFullScale">Torque of full scale; above 0.</param>
public sealed record TorqueReading(double RevolutionsPerMinute, Percentage OfFullScale);
