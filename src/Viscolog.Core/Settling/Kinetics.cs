using System.Runtime.InteropServices;
using MathNet.Numerics;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Settling;

/// <summary>
/// How fast a step builds up: what is left of its change after a time t is exp(−(t/τ)^β), the stretched exponential (Kohlrausch, Annalen
/// der Physik 167 (1854) 179–214), of which β = 1 is first order.
/// </summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Kinetics
{
    /// <summary>Makes one.</summary>
    /// <param name="timeConstant">τ in s, above 0.</param>
    /// <param name="stretch">β, above 0 and at most 1.</param>
    public Kinetics(double timeConstant, double stretch = 1) => (LogTimeConstant, Stretch) = (Math.Log(timeConstant), stretch);

    /// <summary>Makes one from the logarithm of τ in s.</summary>
    internal static Kinetics FromLog(double logTimeConstant, double stretch)
        => new() { LogTimeConstant = logTimeConstant, Stretch = stretch };

    /// <summary>τ in s.</summary>
    public double TimeConstant => Math.Exp(LogTimeConstant);

    /// <summary>β: 1 for first order, less for a long tail.</summary>
    public double Stretch { get; private init; }

    private double LogTimeConstant { get; init; }

    /// <summary>The part of a step's change that is still to come after standing for a time.</summary>
    /// <param name="seconds">Standing time in s, 0 or more; infinity for settled.</param>
    /// <returns>From 1 (nothing has happened) down to 0 (settled).</returns>
    public double Remaining(double seconds) => RemainingAt(Math.Log(seconds));

    /// <summary>The standing time after which less than a part of the change is still to come.</summary>
    /// <param name="part">The part, above 0.</param>
    /// <returns>In s; 0 where that holds from the start.</returns>
    public double Until(double part) => part >= 1 ? 0 : Math.Exp(LogTimeConstant + (Math.Log(-Math.Log(part)) / Stretch));

    /// <summary>The part still to come from the logarithm of the standing time in s.</summary>
    internal double RemainingAt(double logSeconds)
        => double.IsPositiveInfinity(logSeconds) ? 0 : Math.Exp(-Math.Exp(Stretch * (logSeconds - LogTimeConstant)));
}

/// <summary>
/// What is known of a thickener's build-up before any reading, from what it is. τ is log-normal with heavier tails: ln τ = ln median +
/// s·x + t·x·|x|, x standard normal; β = 0.35 + 0.65/(1 + e^x′) with x′ normal about −0.7 by 1.3: half lie above 0.78, one in twenty below
/// 0.47 (a rule of this project; stretched exponentials of gels and glasses have 0.3 to 1).
/// </summary>
/// <param name="MedianSeconds">Median of τ in s.</param>
/// <param name="Spread">s, in ln units.</param>
/// <param name="Tail">t, in ln units.</param>
public sealed record KineticsPrior(double MedianSeconds, double Spread, double Tail)
{
    private readonly double _logMedian = Math.Log(MedianSeconds);

    private const double LeastStretch = 0.35;
    private const double StretchMean = -0.7;
    private const double StretchSd = 1.3;

    /// <summary>
    /// By chemistry. Alkali-swellable and associative: some seconds more of thickening after the stirring (common practice, no source).
    /// Cellulosics and gums: minutes to an hour or two (retarded cellulose ethers start after some 20 min, a supplier's method for
    /// hydroxyethyl cellulose reads at 3 h; xanthan rises most within 15 min and is steady by 1.5 h: Kim and Yoo, International Journal of
    /// Language and Communication Disorders 50 (2015) 397). Clays: longer, gels grow with the logarithm of time (common practice, no
    /// source). Not stated: anything from seconds to an hour.
    /// </summary>
    public static KineticsPrior Of(ThickenerChemistry chemistry) => chemistry switch
    {
        ThickenerChemistry.AlkaliSwellable or ThickenerChemistry.Associative => new(20, 0.5, 0.6),
        ThickenerChemistry.Cellulosic => new(400, 0.8, 0.3),
        ThickenerChemistry.Clay => new(1200, 0.9, 0.4),
        _ => new(40, 0.8, 0.6),
    };

    /// <summary>The kinetics at two standard normal numbers.</summary>
    internal Kinetics At(double time, double stretch) => Kinetics.FromLog(
        _logMedian + (Spread * time) + (Tail * time * Math.Abs(time)),
        LeastStretch + ((1 - LeastStretch) * SpecialFunctions.Logistic(-StretchMean - (StretchSd * stretch))));
}
