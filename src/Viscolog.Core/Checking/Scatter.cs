using MathNet.Numerics.Distributions;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>
/// How single readings scatter, and how surely that is known: a standard deviation with its degrees of freedom, to which sums of squares
/// of repeats are added as to any pooled deviation (NIST/SEMATECH e-Handbook of Statistical Methods, section 2.4.4.3).
/// </summary>
/// <param name="Deviation">Relative standard deviation of a reading; 0 or more.</param>
/// <param name="Freedom">Its degrees of freedom; above 0.</param>
internal sealed record Scatter(double Deviation, double Freedom)
{
    /// <summary>
    /// Degrees of freedom of a stated repeatability: known to a tenth of itself by ν = ½(Δs/s)⁻² (JCGM 100:2008, G.4.2; the tenth is a rule
    /// of this project).
    /// </summary>
    public const double StatedFreedom = 50;

    /// <summary>
    /// Degrees of freedom of one that nobody stated: known to half of itself by the same formula. Laboratories scatter by 2 to 8 % with
    /// methods whose default is 4 %, beginners by 12 %; so it counts as <see cref="DefaultFactor"/> times the default (both rules of this
    /// project, set so that few verdicts are wrong at 12 %: docs/science.md, section 12).
    /// </summary>
    public const double DefaultFreedom = 2;

    /// <summary>See <see cref="DefaultFreedom"/>.</summary>
    public const double DefaultFactor = 2.5;

    /// <summary>Beyond this level of the F law readings scatter more than what was known explains.</summary>
    private const double Inconsistent = 0.99;

    /// <summary>Degrees of freedom of repeats at this bench; 0 where there are none or the repeatability was stated.</summary>
    public double OfRepeats { get; private init; }

    /// <summary>Where it comes from.</summary>
    public ScatterOrigin Origin { get; private init; } = ScatterOrigin.Default;

    /// <summary>One that the run or the bench states.</summary>
    public static Scatter Stated(Percentage repeatability) => new(repeatability.Fraction, StatedFreedom) { Origin = ScatterOrigin.Stated };

    /// <summary>One that nobody states: the method's default, as weak as it is, and repeats of the same bench.</summary>
    /// <param name="run">The batch.</param>
    /// <param name="earlier">Runs whose repeats count; those under another shear condition are left aside.</param>
    public static Scatter Unstated(Run run, IEnumerable<Run> earlier)
    {
        var (deviation, freedom) = LearnedRepeatability.Repeats(
            earlier.Where(r => ShearConditions.Agree(r, run)).Append(BeforeLastStep(run)), DefaultFactor);
        return new Scatter(DefaultFactor * run.MethodInForce.Repeatability.Fraction, DefaultFreedom)
            .With(deviation * deviation * freedom, freedom) with
        { OfRepeats = freedom };
    }

    /// <summary>Pooled with further repeats.</summary>
    /// <param name="squares">Their sum of squares about their mean.</param>
    /// <param name="freedom">Its degrees of freedom.</param>
    public Scatter With(double squares, double freedom) => freedom <= 0 ? this : this with
    {
        Deviation = Math.Sqrt(((Freedom * Deviation * Deviation) + squares) / (Freedom + freedom)),
        Freedom = Freedom + freedom,
    };

    /// <summary>Whether it explains how far repeats scatter.</summary>
    /// <param name="squares">Their sum of squares about their mean.</param>
    /// <param name="freedom">Its degrees of freedom; above 0.</param>
    /// <param name="own">Variance that these repeats have beside it.</param>
    public bool Explains(double squares, double freedom, double own)
    {
        var explained = (Deviation * Deviation) + own;
        return explained <= 0 ? squares <= 0 : squares / freedom / explained <= FisherSnedecor.InvCDF(freedom, Freedom, Inconsistent);
    }

    private static Run BeforeLastStep(Run run)
        => run with { Entries = [.. run.Entries.Take(Steps.Of(run)[^1].Readings.FirstOrDefault()?.Entry ?? run.Entries.Length)] };
}
