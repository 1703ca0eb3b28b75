using System.Collections.Immutable;
using MathNet.Numerics;

namespace Viscolog.Core.Curves;

/// <summary>
/// One family of dose–response curve: the rise u(z) − u(0) of u = ln(body in mPa·s) over z, the dose divided by the top of the thickener's
/// usual range. All parameters are positive and are handled as natural logarithms.
/// </summary>
public abstract class Shape
{
    private protected Shape(string name, params ImmutableArray<ShapeParameter> parameters) => (Name, Parameters) = (name, parameters);

    /// <summary>The shape's name in reports and files.</summary>
    public string Name { get; }

    /// <summary>The parameters with their priors (version 1 of the priors; see docs/science.md).</summary>
    public ImmutableArray<ShapeParameter> Parameters { get; }

    /// <summary>How often curves have this shape before any reading, against an ordinary shape's 1.</summary>
    internal virtual double PriorWeight => 1;

    /// <summary>
    /// How each parameter's logarithm changes with that of the thickener's potency, a factor on every dose; exact but for the rises at the
    /// range top of curved shapes, where the value at the priors' medians stands.
    /// </summary>
    internal abstract ImmutableArray<double> Potency { get; }

    /// <summary>
    /// Median of how far a true curve departs from this shape (model discrepancy), in ln units over the whole range; from memory.
    /// </summary>
    internal virtual double DiscrepancyMedian => 0.06;

    /// <summary>Standard deviation of the logarithm of that.</summary>
    internal virtual double DiscrepancyLogSd => 1;

    /// <summary>The rise above the unthickened base, in ln units.</summary>
    /// <param name="logParameters">Natural logarithms of the parameters, in the order of <see cref="Parameters"/>.</param>
    /// <param name="z">Dose over the top of the usual range, 0 or more.</param>
    public double Rise(ReadOnlySpan<double> logParameters, double z)
    {
        Span<double> parameters = stackalloc double[logParameters.Length];
        Exponentiate(logParameters, parameters);
        return RiseOf(parameters, z);
    }

    /// <summary>Dose over the top of the usual range at which the body is greatest; null for a shape that keeps rising.</summary>
    /// <param name="parameters">The parameters themselves.</param>
    internal virtual double? PeakDose(ReadOnlySpan<double> parameters) => null;

    /// <summary>Takes parameters out of their logarithms.</summary>
    internal static void Exponentiate(ReadOnlySpan<double> logParameters, Span<double> parameters)
    {
        for (var i = 0; i < logParameters.Length; i++)
        {
            parameters[i] = Math.Exp(logParameters[i]);
        }
    }

    /// <summary>The same from the parameters themselves.</summary>
    internal abstract double RiseOf(ReadOnlySpan<double> parameters, double z);
}

/// <summary>A positive parameter of a shape with its prior: normal on the natural logarithm.</summary>
/// <param name="Name">What it is called in reports.</param>
/// <param name="Unit">Its unit: "ln" for a rise in ln(mPa·s), "R" for a dose over the top of the usual range, "1" for a pure
/// number.</param>
/// <param name="Median">The prior's median; above 0. From memory unless docs/science.md names a source.</param>
/// <param name="LogSd">The prior's standard deviation on the logarithm; above 0.</param>
public sealed record ShapeParameter(string Name, string Unit, double Median, double LogSd);

/// <summary>The shapes in use. A new shape is added here and nowhere else.</summary>
public static class Shapes
{
    /// <summary>Every shape, in the order of reports.</summary>
    public static ImmutableArray<Shape> All { get; } =
    [
        new ExponentialShape(),
        new LogQuadraticShape(),
        new SigmoidShape(),
        new OnsetShape(),
        new SaturatingShape(),
        new TwoStageShape(),
        new SteepStepShape(),
        new CrowdingShape(),
        new UnevenShape(),
        new OverlapShape(),
        new ThresholdShape(),
    ];
}

/// <summary>Body grows by the same factor with every gram: u = k·z.</summary>
internal sealed class ExponentialShape() : Shape(
    "exponential",
    new ShapeParameter("rise at range top", "ln", 3.9, 0.4))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 1.7;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
        => parameters[0] * z;
}

/// <summary>Quick at first and ever slower: u = S·z/(K + z).</summary>
internal sealed class SaturatingShape() : Shape(
    "saturating",
    new ShapeParameter("rise at range top", "ln", 4.1, 0.35),
    new ShapeParameter("half-way dose", "R", 0.3, 0.7))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 1.4;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0.23, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (rise, half) = (parameters[0], parameters[1]);
        return rise * (1 + half) * z / (half + z);
    }
}

/// <summary>Rise and fall: u = H·(2·z/p − (z/p)²), greatest at z = p.</summary>
internal sealed class LogQuadraticShape() : Shape(
    "log-quadratic",
    new ShapeParameter("peak height", "ln", 3.4, 0.4),
    new ShapeParameter("peak dose", "R", 1.05, 0.35))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 0.6;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1];

    /// <inheritdoc/>
    internal override double? PeakDose(ReadOnlySpan<double> parameters) => parameters[1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (height, peak) = (parameters[0], parameters[1]);
        var t = z / peak;
        return height * t * (2 - t);
    }
}

/// <summary>A slow start, a steep middle and a plateau: u = S·z^h/(z50^h + z^h) (the Hill form).</summary>
internal sealed class SigmoidShape() : Shape(
    "sigmoid",
    new ShapeParameter("span", "ln", 4.2, 0.3),
    new ShapeParameter("half-way dose", "R", 0.41, 0.27),
    new ShapeParameter("steepness", "1", 2.25, 0.5))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 2.1;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1, 0];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (span, half, steepness) = (parameters[0], parameters[1], parameters[2]);
        return z <= 0 ? 0 : span / (1 + Math.Pow(half / z, steepness));
    }
}

/// <summary>Little until an onset c, then a rise: u = k·z + a·max(0, z − c)^p with 1 ≤ p ≤ 2.</summary>
internal sealed class OnsetShape() : Shape(
    "onset",
    new ShapeParameter("rise at range top", "ln", 3.2, 0.45),
    new ShapeParameter("onset dose", "R", 0.16, 0.65),
    new ShapeParameter("power above 1", "1", 0.28, 0.6),
    new ShapeParameter("slope before onset", "ln", 0.22, 1.05))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 0.6;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1.7, -1, 0, 1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (rise, onset, above, slope) = (parameters[0], parameters[1], parameters[2], parameters[3]);
        var before = slope * z;
        if (z <= onset)
        {
            return before;
        }

        // The rise is stated at the range top; an onset near or beyond the top keeps a finite steepness.
        var power = 1 + Math.Min(1, above);
        var reach = Math.Max(0.2, 1 - onset);
        return before + (rise * Math.Pow((z - onset) / reach, power));
    }
}

/// <summary>
/// Ever steeper towards a dose m at which the pot would lock up: u = −S·ln(1 − z/m), the form of Krieger and Dougherty (Transactions of the
/// Society of Rheology 3 (1959) 137–152) for crowded suspensions and swollen particles; straight on from 0.97 m.
/// </summary>
internal sealed class CrowdingShape() : Shape(
    "crowding",
    new ShapeParameter("strength", "ln", 1.7, 0.4),
    new ShapeParameter("locking dose", "R", 1.35, 0.3))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 0.5;

    /// <summary>Part of the locking dose from which on the curve goes straight on, so that it stays finite.</summary>
    private const double Straight = 0.97;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (strength, locking) = (parameters[0], parameters[1]);
        var part = z / locking;
        var curved = Math.Min(part, Straight);
        return strength * (((part - curved) / (1 - Straight)) - Math.Log(1 - curved));
    }
}

/// <summary>
/// Little for long, then nearly all at once: u = k·z + B·(s((z − b)/w) − s(−b/w)), s the logistic function. What a plateau hides: the
/// readings before the step tell nothing of it.
/// </summary>
internal sealed class SteepStepShape() : Shape(
    "steep step",
    new ShapeParameter("slope", "ln", 1.2, 0.4),
    new ShapeParameter("step height", "ln", 1.9, 0.3),
    new ShapeParameter("step dose", "R", 0.47, 0.26),
    new ShapeParameter("step width", "R", 0.033, 0.47))
{
    /// <summary>More than others, as is the two-stage shape: nothing before a step tells of it.</summary>
    internal override double PriorWeight => 1;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1, 0, -1, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (slope, height, place, width) = (parameters[0], parameters[1], parameters[2], parameters[3]);
        return (slope * z) + (height * (SpecialFunctions.Logistic((z - place) / width) - SpecialFunctions.Logistic(-place / width)));
    }
}

/// <summary>
/// A quick first rise with a plateau, then a second rise: u = A·(1 − e^(−z/a)) + B·(s((z − b)/w) − s(−b/w)), s the logistic function.
/// </summary>
internal sealed class TwoStageShape() : Shape(
    "two-stage",
    new ShapeParameter("first rise", "ln", 1.2, 0.4),
    new ShapeParameter("first dose", "R", 0.13, 0.45),
    new ShapeParameter("second rise", "ln", 2.4, 0.35),
    new ShapeParameter("second dose", "R", 0.6, 0.18),
    new ShapeParameter("second width", "R", 0.054, 0.5))
{
    /// <summary>More than others: a plateau that is taken for the end of the curve is what pots go over by.</summary>
    internal override double PriorWeight => 1;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1, 0, -1, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (first, reach, second, place, width) = (parameters[0], parameters[1], parameters[2], parameters[3], parameters[4]);
        return (first * (1 - Math.Exp(-z / reach))) + (
            second * (SpecialFunctions.Logistic((z - place) / width) - SpecialFunctions.Logistic(-place / width)));
    }
}

/// <summary>
/// A power law of concentration above an overlap: u = ln(1 + (z/z0)^p). Published exponents of polymers in water run from 1 (linear in the
/// viscosity) to 5.4 (Morris and others, Carbohydrate Polymers 1 (1981) 5–21: 1.4 below and 3.3 above the overlap), overlaps from a
/// hundredth of the usual range on.
/// </summary>
internal sealed class OverlapShape() : Shape(
    "overlap",
    new ShapeParameter("overlap dose", "R", 0.07, 0.95),
    new ShapeParameter("power", "1", 2.3, 0.5))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 2.2;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [-1, 0];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
        => z <= 0 ? 0 : Math.Log(1 + Math.Pow(z / parameters[0], parameters[1]));
}

/// <summary>
/// Almost nothing up to a threshold c, then steep and ever less so: u = k·z + a·ln(1 + max(0, z − c)/w), a power law of what lies beyond
/// the threshold, as of networks that need a least concentration.
/// </summary>
internal sealed class ThresholdShape() : Shape(
    "threshold",
    new ShapeParameter("power", "1", 1.2, 0.45),
    new ShapeParameter("threshold dose", "R", 0.15, 0.85),
    new ShapeParameter("width", "R", 0.027, 0.9),
    new ShapeParameter("slope", "ln", 0.13, 0.7))
{
    /// <summary>More than others: a flat start tells nothing of the threshold.</summary>
    internal override double PriorWeight => 2;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1, -1, 1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var (power, threshold, width, slope) = (parameters[0], parameters[1], parameters[2], parameters[3]);
        return (slope * z) + (power * Math.Log(1 + (Math.Max(0, z - threshold) / width)));
    }
}

/// <summary>
/// No form at all: a straight rise u = k·z from which the true curve strays by a lot, so that what lies beyond the last dose is foretold by
/// the general pace only. It stands for kinks, steps and plateaus that no other shape has.
/// </summary>
internal sealed class UnevenShape() : Shape(
    "uneven",
    new ShapeParameter("rise at range top", "ln", 4.1, 0.35))
{
    /// <inheritdoc/>
    internal override double PriorWeight => 1.1;

    /// <inheritdoc/>
    internal override double DiscrepancyMedian => 0.5;

    /// <inheritdoc/>
    internal override double DiscrepancyLogSd => 0.4;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
        => parameters[0] * z;
}
