using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// What the readings of a run and the prior say of the body, and with two thickeners of the string, at any doses: equally likely draws,
/// each with what the readings leave of its level. Given the readings body and string are independent. Made by <see cref="Posteriors"/>.
/// </summary>
public sealed class Posterior
{
    /// <summary>A dose is sought up to so many times the usual range (a rule of this project: stated ranges end early).</summary>
    public const double SoughtUpTo = 1.2;

    /// <summary>Beyond so many times the usual range there is no forecast (a rule of this project).</summary>
    public const double ForecastUpTo = 1.5;

    private readonly double _bodyTop;
    private readonly double _stringTop;

    internal Posterior(Evidence evidence, Prior prior, ImmutableArray<double> shapeWeights, ImmutableArray<BodyDraw> bodies)
    {
        (Evidence, Prior, ShapeWeights, Bodies) = (evidence, prior, shapeWeights, bodies);
        Repeatability = Math.Sqrt(bodies.Average(d => d.Repeatability * d.Repeatability));
        _bodyTop = evidence.RangeTop;
        _stringTop = evidence.StringThickener is null ? 1 : evidence.StringTop;
    }

    /// <summary>The evidence it was made from.</summary>
    public Evidence Evidence { get; }

    /// <summary>The prior it was made with.</summary>
    public Prior Prior { get; }

    /// <summary>
    /// The weight of each of <see cref="Shapes.All"/> for the body over the dose of the thickener that makes it; they sum to 1.
    /// </summary>
    public ImmutableArray<double> ShapeWeights { get; }

    /// <summary>The chance that this pot is unlike all its earlier runs; 0 without any.</summary>
    public Percentage ChanceUnlikeHistory { get; internal init; }

    /// <summary>The draws of the body.</summary>
    internal ImmutableArray<BodyDraw> Bodies { get; }

    /// <summary>The draws of the string; none with one thickener.</summary>
    internal ImmutableArray<PairStringDraw> Strings { get; init; } = [];

    /// <summary>The settled body at doses.</summary>
    /// <param name="doses">The doses.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    public Estimate BodyAt(Doses doses, Percentage level) => At(doses).ToEstimate(level);

    /// <summary>A single settled reading of the body at doses: wider than the body by the method's repeatability.</summary>
    /// <param name="doses">The doses.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    public Estimate ReadingAt(Doses doses, Percentage level) => At(doses).Blurred(Repeatability).ToEstimate(level);

    /// <summary>The string at doses.</summary>
    /// <param name="doses">The doses.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">The posterior is of one thickener.</exception>
    public LengthEstimate StringAt(Doses doses, Percentage level) => At(doses, Quantity.Stringiness).ToLengths(level);

    /// <summary>The dose that first brings the body of a pot with one thickener up to a value.</summary>
    /// <param name="body">The wanted body.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    /// <returns>Null where the body is not expected to be reached within <see cref="SoughtUpTo"/> of the usual range.</returns>
    public DoseEstimate? DoseFor(Viscosity body, Percentage level) => new Reach(Bodies, _bodyTop, body).Dose(level);

    /// <summary>The chance that the body of a pot with one thickener comes up to a value at some dose within a limit.</summary>
    /// <param name="body">The wanted body.</param>
    /// <param name="within">The greatest dose considered.</param>
    public Percentage ChanceOfReaching(Viscosity body, Dose within) => Reach(body).ChanceWithin(within);

    /// <summary>For each draw the dose that first brings the body up to a value, for a pot with one thickener.</summary>
    internal Reach Reach(Viscosity body) => new(Bodies, _bodyTop, body);

    /// <summary>The logarithm of a quantity at doses: the settled body in mPa·s, or the string in mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The string is asked for and the posterior is of one thickener.</exception>
    internal LnEstimate At(Doses doses, Quantity quantity = Quantity.Body)
    {
        var (body, strings) = Ranges(doses);
        return quantity switch
        {
            Quantity.Body => LnEstimate.Of(Bodies, d => d.At(body, strings)),
            Quantity.Stringiness when !Strings.IsEmpty => LnEstimate.Of(Strings, d => d.At(body, strings)),
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "a posterior of one thickener says nothing of strings"),
        };
    }

    /// <summary>What a step shows of the body after standing for a time, without the reading's own error.</summary>
    internal LnEstimate At(EvidenceStep step, double waitSeconds)
    {
        var (body, strings) = Ranges(step.Doses);
        return LnEstimate.Of(Bodies, d =>
        {
            var (mean, variance) = d.At(body, strings);
            return (mean - (d.Changes[step.Place] * d.Kinetics.Remaining(waitSeconds)), variance);
        });
    }

    /// <summary>Change of the body still to come at the start of a step's standing, for each draw, in ln units.</summary>
    internal double[] ChangesIn(EvidenceStep step) => [.. Bodies.Select(d => d.Changes[step.Place])];

    /// <summary>Rise of the body between doses, for each draw, in ln units.</summary>
    internal double[] RisesBetween(Doses from, Doses to)
    {
        var (before, after) = (Ranges(from), Ranges(to));
        return [.. Bodies.Select(d => d.At(after.Body, after.String).Mean - d.At(before.Body, before.String).Mean)];
    }

    /// <summary>The build-up of each draw.</summary>
    internal Kinetics[] Kinetics() => [.. Bodies.Select(d => d.Kinetics)];

    /// <summary>Standard deviation in K of what the temperature coefficient may be off by.</summary>
    internal double CoefficientSd => Math.Sqrt(Bodies.Average(d => d.CoefficientOff * d.CoefficientOff));

    /// <summary>What a single reading of the body scatters by, in ln units: the root mean square of the draws.</summary>
    internal double Repeatability { get; }

    /// <summary>The settled ln body of each draw at doses, with the spread that its level leaves.</summary>
    internal double[] DrawsAt(Doses doses)
    {
        var (body, strings) = Ranges(doses);
        return [.. Bodies.Select((d, i) =>
        {
            var (mean, variance) = d.At(body, strings);
            return mean + (EvenNormals.At(i) * Math.Sqrt(variance));
        })];
    }

    /// <summary>The median dose of the peak over the draws that have one; null where their shapes weigh no more than a bound.</summary>
    internal Dose? PeakDose(double leastWeight)
    {
        double[] peaks = [.. Bodies.Select(d => d.PeakDose).OfType<double>().Order()];
        return peaks.Length == 0
            || Bodies.Where(d => d.PeakDose is not null).DistinctBy(d => d.ShapeIndex).Sum(d => ShapeWeights[d.ShapeIndex]) <= leastWeight
            ? null
            : Dose.FromPercent(peaks[peaks.Length / 2] * _bodyTop);
    }

    private (double Body, double String) Ranges(Doses doses) => (doses.Body.Percent / _bodyTop, doses.Strings.Percent / _stringTop);
}

/// <summary>The dose–response curve at one dose.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Body">The settled body: median and band of the mean.</param>
/// <param name="Reading">A single reading of it: the same median and the wider band of a reading.</param>
public sealed record CurveSample(Dose Dose, Estimate Body, Estimate Reading);
