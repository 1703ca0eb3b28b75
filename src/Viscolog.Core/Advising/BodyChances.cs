using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Where the settled body of a pot lies to a band, by chance; the three sum to 100 %.</summary>
/// <param name="Under">Below it.</param>
/// <param name="InBand">In it.</param>
/// <param name="Over">Above it.</param>
public sealed record BodyChances(Percentage Under, Percentage InBand, Percentage Over)
{
    /// <summary>The chances at a dose.</summary>
    /// <param name="posterior">The posterior.</param>
    /// <param name="dose">The dose.</param>
    /// <param name="band">The band.</param>
    public static BodyChances Of(Posterior posterior, Dose dose, ViscosityBand band)
    {
        var body = posterior.At(dose);
        var over = Math.Clamp(body.ChanceAbove(band.High.Ln), 0, 1);
        var above = Math.Clamp(body.ChanceAbove(band.Low.Ln), over, 1);
        return new(Percentage.FromFraction(1 - above), Percentage.FromFraction(above - over), Percentage.FromFraction(over));
    }
}
