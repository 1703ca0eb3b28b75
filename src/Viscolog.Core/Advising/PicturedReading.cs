using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>One reading as a plot shows it.</summary>
/// <param name="Step">The place of its step in the run, from 0.</param>
/// <param name="Dose">The dose it was taken at.</param>
/// <param name="Wait">Standing since stirring ended; null where nobody wrote it down.</param>
/// <param name="Value">At the reference temperature.</param>
/// <param name="Expected">What the belief expects this reading to be.</param>
/// <param name="StandardizedResidual">ln(value/expected) over the repeatability.</param>
/// <param name="Doubted">Whether it lies so far off the others that it counts for less.</param>
public sealed record PicturedReading(
    int Step, Dose Dose, TimeSpan? Wait, Viscosity Value, Viscosity Expected, double StandardizedResidual, bool Doubted)
{
    /// <summary>The place of its entry in the run, from 0.</summary>
    public int Entry { get; init; }
}
