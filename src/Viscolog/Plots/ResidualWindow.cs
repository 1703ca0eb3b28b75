using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>The part of the dose–residual plane that a picture shows.</summary>
/// <param name="Dose">The greatest dose, %; the least is 0.</param>
/// <param name="Reach">The greatest residual either way, in repeatabilities.</param>
internal sealed record ResidualWindow(double Dose, double Reach)
{
    /// <summary>Of normal scatter, about 95 % lies within.</summary>
    public const double Usual = 2;

    public static ResidualWindow Of(IReadOnlyList<RunPicture> pictures)
    {
        var readings = pictures.SelectMany(p => p.Readings).ToList();
        var doses = readings.Select(r => r.Dose.Percent).DefaultIfEmpty(0).Max();
        var reach = readings.Select(r => Math.Abs(r.StandardizedResidual)).Where(double.IsFinite).Append(Usual).Max();
        return new((doses > 0 ? doses : 1) * 1.08, 1.25 * reach);
    }
}
