using MathNet.Numerics.Integration;

namespace Viscolog.Core.Flow;

/// <summary>
/// How a law shears the liquid between a turning bob and its cup: Ω = ½∫γ d ln τ from cup to bob, the stress falling with the square of the
/// radius (Krieger and Elrod, J. Appl. Phys. 24 (1953) 134; from memory). Where a yield stress is not reached at the cup, the integral
/// begins at it, and only a layer next to the bob flows.
/// </summary>
/// <param name="ratio">Radius of the cup over that of the bob; infinite in a wide vessel.</param>
internal sealed class GapProfile(double ratio)
{
    private const int MostSteps = 60;

    /// <summary>From this ratio on a wider vessel makes no difference (1e-8 for a Newtonian liquid, less for others).</summary>
    private const double Widest = 1e4;

    /// <summary>Newton's next step would be lost in rounding.</summary>
    private const double LastStep = 1e-9;

    /// <summary>How far the stress at the cup may be off, in ln: the speed does not change with it in first order.</summary>
    private const double Enough = 1e-8;

    /// <summary>Under this part of the rate at the bob a liquid counts as standing.</summary>
    private const double Standing = 1e-12;

    /// <summary>Nodes of the integral, and the power of them that crowds them where the rate is low and laws bend.</summary>
    private static readonly GaussLegendreRule Rule = new(0, 1, 16);
    private const int Crowding = 4;

    private readonly double _twiceLnRatio = 2 * Math.Log(Math.Min(ratio, Widest));

    /// <summary>The shear rate at the bob in 1/s; not a number where the law does not turn it so.</summary>
    /// <param name="model">The law.</param>
    /// <param name="theta">Its parameters.</param>
    /// <param name="speed">Of the bob, in rad/s; above 0.</param>
    /// <param name="guess">A rate to begin at, in 1/s; above 0.</param>
    public double RateAtBob(FlowModel model, ReadOnlySpan<double> theta, double speed, double guess)
    {
        var (ln, wanted) = (Math.Log(guess), Math.Log(speed));
        for (var i = 0; i < MostSteps; i++)
        {
            var (turns, slope) = Speed(model, theta, Math.Exp(ln));
            var step = (wanted - Math.Log(turns)) / slope;
            if (!double.IsFinite(step) || slope <= 0)
            {
                return double.NaN;
            }

            ln += Math.Clamp(step, -2, 2);
            if (Math.Abs(step) < LastStep)
            {
                return Math.Exp(ln);
            }
        }

        return double.NaN;
    }

    /// <summary>The speed in rad/s that goes with a rate at the bob, and d ln speed/d ln rate.</summary>
    private (double Speed, double Slope) Speed(FlowModel model, ReadOnlySpan<double> theta, double rate)
    {
        var stress = model.Stress(rate, theta);
        var atCup = RateAtCup(model, theta, rate, stress);
        var sum = atCup > 0 ? atCup * _twiceLnRatio : 0;
        for (var i = 0; i < Rule.Order; i++)
        {
            var (v, weight) = (Rule.GetAbscissa(i), Rule.GetWeight(i));
            var cubed = v * v * v;
            var here = atCup + ((rate - atCup) * cubed * v);
            sum += weight * Crowding * cubed * (rate - atCup) * Math.Log(stress / model.Stress(here, theta));
        }

        const double step = 1e-4;
        var slope = Math.Log(model.Stress(rate * (1 + step), theta) / model.Stress(rate * (1 - step), theta)) / (2 * step);
        return (sum / 2, (rate - atCup) * slope / sum);
    }

    /// <summary>The rate at the cup, where the stress is 1/ratio² of that at the bob; 0 where the liquid stands there.</summary>
    private double RateAtCup(FlowModel model, ReadOnlySpan<double> theta, double rate, double stress)
    {
        if (!(model.Stress(rate * Standing, theta) < stress * Math.Exp(-_twiceLnRatio)))
        {
            return 0;
        }

        // Regula falsi in logarithms, Illinois' way.
        var (low, high) = (Math.Log(rate * Standing), Math.Log(rate));
        var (under, over) = (Off(low, theta), _twiceLnRatio);
        for (var i = 0; i < MostSteps; i++)
        {
            var middle = ((low * over) - (high * under)) / (over - under);
            var off = Off(middle, theta);
            if (off < 0)
            {
                (low, under, over) = (middle, off, over / 2);
            }
            else
            {
                (high, over, under) = (middle, off, under / 2);
            }

            if (Math.Abs(off) < Enough)
            {
                return Math.Exp(middle);
            }
        }

        return Math.Exp((low + high) / 2);

        // A law with a yield stress below 0 has no stress at low rates; any such rate is too low.
        double Off(double ln, ReadOnlySpan<double> at)
            => model.Stress(Math.Exp(ln), at) is > 0 and var here ? Math.Log(here / stress) + _twiceLnRatio : -_twiceLnRatio;
    }
}
