using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// What the readings of a run, and the prior, say of its dose–response curve: draws over shapes, parameters, time constant and
/// discrepancy, each with the level that the readings leave. Deterministic: the same evidence gives the same posterior.
/// </summary>
public sealed class Posterior : IStepForecast
{
    /// <summary>A draw so far below its shape's likeliest, in ln of weight, counts for nothing.</summary>
    private const double NegligibleBelow = 14;

    /// <summary>Doses over the range top at which a curve is looked at for whether it comes up to the aim.</summary>
    private static readonly ImmutableArray<double> LookedAt = [0.3, 0.5, 0.7, 0.85, 1, 1.2];

    private readonly CurveFilter filter;
    private readonly ImmutableArray<CurveDraw> cases;
    private readonly WeightedSample[] draws;
    private readonly double rangeTop;
    private FirstDosesOf? reached;

    private Posterior(Evidence evidence, double rangeTop, Prior prior, ViscosityBand? target, SamplingEffort effort)
    {
        Evidence = evidence;
        this.rangeTop = rangeTop;
        Prior = prior;
        filter = new(evidence, rangeTop, prior);
        draws = new PopulationMonteCarlo(effort).Draw([.. Shapes.All.Select(Kind)]);
        if (target is not null)
        {
            DiscountUnusual(target.Aim.Ln);
        }

        ShapeWeights = Weigh();
        cases = Resampling.Of(draws, ShapeWeights, effort.Cases, (s, draw) => new CurveDraw(s, draw, filter));
        ChanceUnlikeHistory = prior.Runs == 0 ? Percentage.FromFraction(0) : Percentage.FromFraction(ChanceUnlike());
    }

    /// <summary>Two posteriors of one run, of which either may be right.</summary>
    private Posterior(Posterior one, Posterior other, double chanceOfOther)
    {
        (Evidence, rangeTop, Prior, filter, draws) = (one.Evidence, one.rangeTop, one.Prior, one.filter, one.draws);
        ShapeWeights = [.. one.ShapeWeights.Zip(other.ShapeWeights, (a, b) => ((1 - chanceOfOther) * a) + (chanceOfOther * b))];
        cases = [.. Enumerable.Range(0, one.cases.Length).Select(i => IsOther(i) ? other.cases[i] : one.cases[i])];
        LogEvidence = one.LogEvidence;

        // Every case of the one at whose place the running count of the other's share passes a whole number.
        bool IsOther(int i) => Math.Floor((i + 1) * chanceOfOther) > Math.Floor(i * chanceOfOther);
    }

    /// <summary>The evidence it was made from.</summary>
    public Evidence Evidence { get; }

    /// <summary>The prior it was made with.</summary>
    public Prior Prior { get; }

    /// <summary>The weight of each of <see cref="Shapes.All"/>; they sum to 1.</summary>
    public ImmutableArray<double> ShapeWeights { get; }

    /// <summary>The chance that this pot is unlike all its earlier runs; 0 without any.</summary>
    public Percentage ChanceUnlikeHistory { get; private set; }

    /// <summary>How likely the readings are under the prior, as a logarithm up to a constant of the readings alone.</summary>
    internal double LogEvidence { get; private set; }

    double IStepForecast.Repeatability => Evidence.Repeatability;

    double IStepForecast.RangeTop => Evidence.RangeTop;

    ImmutableArray<EvidenceStep> IStepForecast.Steps => Evidence.Steps;

    /// <summary>The draws, equally likely.</summary>
    internal ImmutableArray<CurveDraw> Cases => cases;

    /// <summary>Makes the posterior.</summary>
    /// <param name="evidence">The run's evidence.</param>
    /// <param name="prior">What was believed before it.</param>
    /// <param name="target">The band aimed at; null where there is none. Curves that never come near it count for less.</param>
    public static Posterior From(Evidence evidence, Prior prior, ViscosityBand? target) => new(evidence, evidence.RangeTop, prior, target, SamplingEffort.Full);

    /// <summary>
    /// The posterior after earlier runs, or without them where the readings say that this pot is unlike them. The two priors are weighed by how
    /// likely each makes the readings; the second is worked out only where there is a sign of it.
    /// </summary>
    /// <param name="evidence">The run's evidence.</param>
    /// <param name="prior">The prior from the earlier runs.</param>
    /// <param name="target">The band aimed at; null where there is none.</param>
    public static Posterior WithHistory(Evidence evidence, Prior prior, ViscosityBand? target)
    {
        var posterior = From(evidence, prior, target);
        if (prior.Runs == 0 || (posterior.ChanceUnlikeHistory.Fraction < HistorySettings.SignOfUnlike && !prior.IsFarFrom(evidence)))
        {
            return posterior;
        }

        var without = From(evidence, Prior.Common, target);
        var odds = HistorySettings.UnlikeBase / (1 - HistorySettings.UnlikeBase) * Math.Exp(Math.Min(700, without.LogEvidence - posterior.LogEvidence));
        var chance = (posterior.ChanceUnlikeHistory.Fraction + odds) / (1 + odds);
        if (chance >= HistorySettings.SurelyUnlike)
        {
            without.ChanceUnlikeHistory = Percentage.FromFraction(chance);
            return without;
        }

        return new(posterior, without, odds / (1 + odds)) { ChanceUnlikeHistory = Percentage.FromFraction(chance) };
    }

    /// <summary>The posterior of an earlier run, on the dose scale of the thickener in the run at hand.</summary>
    /// <param name="earlier">The earlier run's evidence.</param>
    /// <param name="range">The usual range in force.</param>
    public static Posterior OfEarlier(Evidence earlier, DoseRange range) => new(earlier, range.Top.Percent, Prior.Common, null, SamplingEffort.Moments);

    /// <summary>The settled body at a dose.</summary>
    /// <param name="dose">The dose.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    public Estimate BodyAt(Dose dose, Percentage level) => At(dose).ToEstimate(level);

    /// <summary>A single settled reading at a dose: wider than the body by the method's repeatability.</summary>
    /// <param name="dose">The dose.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    public Estimate ReadingAt(Dose dose, Percentage level) => At(dose).Blurred(Evidence.Repeatability).ToEstimate(level);

    /// <summary>The dose that first brings the body up to a value.</summary>
    /// <param name="body">The wanted body.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    /// <returns>Null where the body is not expected to be reached within 1.2 of the usual range.</returns>
    public DoseEstimate? DoseFor(Viscosity body, Percentage level)
    {
        double[] doses = [.. FirstDoses(body.Ln)];
        Array.Sort(doses);
        double Quantile(double part) => doses[(int)Math.Clamp(part * doses.Length, 0, doses.Length - 1)];
        Dose? At(double part) => double.IsInfinity(Quantile(part)) ? null : Dose.FromPercent(Quantile(part) * rangeTop);
        return At(0.5) is { } median ? new(median, At((1 - level.Fraction) / 2) ?? median, At((1 + level.Fraction) / 2), level) : null;
    }

    /// <summary>The chance that the body comes up to a value at some dose within a limit.</summary>
    /// <param name="body">The wanted body.</param>
    /// <param name="within">The greatest dose considered.</param>
    public Percentage ChanceOfReaching(Viscosity body, Dose within)
    {
        var most = within.Percent / rangeTop;
        return Percentage.FromFraction((double)FirstDoses(body.Ln).Count(d => d <= most) / cases.Length);
    }

    /// <summary>The settled ln body at a dose.</summary>
    internal LnEstimate At(Dose dose)
    {
        var means = new double[cases.Length];
        var sds = new double[cases.Length];
        for (var i = 0; i < means.Length; i++)
        {
            var (mean, variance) = cases[i].At(dose.Percent / rangeTop);
            (means[i], sds[i]) = (mean, Math.Sqrt(variance));
        }

        return new(means, sds);
    }

    /// <summary>What a step shows after standing for a time, without the reading's own error.</summary>
    internal LnEstimate At(EvidenceStep step, double waitSeconds) => ((IStepForecast)this).At(step, waitSeconds);

    LnEstimate IStepForecast.At(EvidenceStep step, double waitSeconds)
    {
        var means = new double[cases.Length];
        var sds = new double[cases.Length];
        for (var i = 0; i < means.Length; i++)
        {
            var (level, variance) = cases[i].Level(step.Dose / rangeTop);
            var (rise, start) = (cases[i].Rises[step.Place], cases[i].Starts[step.Place]);
            means[i] = level + rise + ((start - rise) * BuildUp.Remaining(waitSeconds, cases[i].TimeConstant));
            sds[i] = Math.Sqrt(variance);
        }

        return new(means, sds);
    }

    /// <summary>Change still to come at the start of a step's standing, for each case, in ln units.</summary>
    internal double[] ChangesIn(EvidenceStep step) => ((IStepForecast)this).ChangesIn(step);

    double[] IStepForecast.ChangesIn(EvidenceStep step) => [.. cases.Select(c => c.Rises[step.Place] - c.Starts[step.Place])];

    /// <summary>Rise of each case between two doses, in ln units.</summary>
    internal double[] RisesBetween(Dose from, Dose to) => [.. cases.Select(c => c.At(to.Percent / rangeTop).Mean - c.At(from.Percent / rangeTop).Mean)];

    /// <summary>The settled ln body of each case at a dose, with the spread that its level leaves.</summary>
    internal double[] DrawsAt(Dose dose)
    {
        var values = new double[cases.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var (mean, variance) = cases[i].At(dose.Percent / rangeTop);
            values[i] = mean + (EvenNormals.At(i) * Math.Sqrt(variance));
        }

        return values;
    }

    /// <summary>τ in s of each case.</summary>
    internal double[] TimeConstants() => ((IStepForecast)this).TimeConstants();

    double[] IStepForecast.TimeConstants() => [.. cases.Select(c => c.TimeConstant)];

    /// <summary>The moments of one shape's parameters; null where the shape has next to no weight.</summary>
    internal PosteriorSummary? Summarize(int shape)
    {
        if (ShapeWeights[shape] < 0.01)
        {
            return null;
        }

        var (mean, covariance) = draws[shape].Moments();
        return new(ShapeWeights[shape], mean, covariance);
    }

    /// <summary>Mean and variance of the ln body of the base without thickener.</summary>
    internal (double Mean, double Variance) LevelOfBase()
    {
        var moments = cases.Select(c => c.Level(0)).ToArray();
        var mean = moments.Average(m => m.Mean);
        return (mean, moments.Average(m => m.Variance + ((m.Mean - mean) * (m.Mean - mean))));
    }

    /// <summary>For each case the dose over the range top that first brings the body up; the last answer is kept, as one band is asked for again and again.</summary>
    private double[] FirstDoses(double ln)
    {
        if (reached is { } known && known.Ln == ln)
        {
            return known.Doses;
        }

        var doses = new double[cases.Length];
        for (var i = 0; i < doses.Length; i++)
        {
            doses[i] = FirstDose(cases[i], ln, EvenNormals.At(i));
        }

        reached = new(ln, doses);
        return doses;
    }

    private static double FirstDose(CurveDraw curve, double ln, double deviate)
    {
        const int grid = 60;
        const double furthest = 1.2;
        double Excess(double dose)
        {
            var (mean, variance) = curve.At(dose);
            return mean + (deviate * Math.Sqrt(variance)) - ln;
        }

        var before = Excess(0);
        if (before >= 0)
        {
            return 0;
        }

        for (var i = 1; i <= grid; i++)
        {
            var after = Excess(furthest * i / grid);
            if (after >= 0)
            {
                return furthest * (i - 1 + (before / (before - after))) / grid;
            }

            before = after;
        }

        return double.PositiveInfinity;
    }

    private SampledFamily Kind(Shape shape, int place) => new(
        shape.Parameters.Length + Prior.Extra,
        Prior.Mixtures[place],
        () =>
        {
            var own = new CurveFilter(Evidence, rangeTop, Prior);
            return row => own.LogLikelihood(shape, row);
        },
        104729 * place);

    private void DiscountUnusual(double aim)
    {
        var low = Evidence.Thickener.UsualRange.Low.Percent / rangeTop;
        var noneIn = filter.SortedDoses[^1] <= 0;
        var means = new double[filter.Doses.Length];
        var variances = new double[filter.Doses.Length];
        for (var s = 0; s < draws.Length; s++)
        {
            var shape = Shapes.All[s];
            var least = draws[s].LogWeights.Max() - NegligibleBelow;
            for (var i = 0; i < draws[s].Count; i++)
            {
                var row = draws[s].Row(i);
                if (!(draws[s].LogWeights[i] > least))
                {
                    continue;
                }

                var parameters = row[..^Prior.Extra];
                filter.Prepare(shape, parameters, Math.Exp(row[^2]));
                filter.LogLikelihood(Math.Exp(row[^2]), Math.Exp(row[^1]), means, variances);
                draws[s].LogWeights[i] += !Reaches(shape, parameters, means[^1], aim) ? Math.Log(PosteriorSettings.UnreachingWeight)
                    : noneIn && means[^1] + shape.Rise(parameters, low) > aim ? Math.Log(PosteriorSettings.BelowRangeWeight) : 0;
            }
        }
    }

    private static bool Reaches(Shape shape, ReadOnlySpan<double> parameters, double level, double aim)
    {
        foreach (var place in LookedAt)
        {
            if (level + shape.Rise(parameters, place) >= aim)
            {
                return true;
            }
        }

        return false;
    }

    private sealed record FirstDosesOf(double Ln, double[] Doses);

    private ImmutableArray<double> Weigh()
    {
        var logs = draws.Select((d, s) => d.LogMeanWeight() + Math.Log(Prior.Mixtures[s].Total)).ToArray();
        var greatest = logs.Max();
        var weights = double.IsNegativeInfinity(greatest) ? [.. logs.Select(_ => 1.0)] : logs.Select(l => Math.Exp(l - greatest)).ToArray();
        var sum = weights.Sum();
        LogEvidence = greatest + Math.Log(sum);
        return [.. weights.Select(w => w / sum)];
    }

    private double ChanceUnlike()
    {
        var sum = 0.0;
        for (var s = 0; s < draws.Length; s++)
        {
            var weights = draws[s].Weights();
            for (var i = 0; i < weights.Length; i++)
            {
                sum += weights[i] > 1e-9 ? weights[i] * ShapeWeights[s] * Prior.Mixtures[s].PartOfFirst(draws[s].Row(i)) : 0;
            }
        }

        return Math.Clamp(sum, 0, 1);
    }
}

/// <summary>The believed dose–response curve at one dose.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Body">The settled body: median and band of the mean.</param>
/// <param name="Reading">A single reading of it: the same median and the wider band of a reading.</param>
public sealed record CurveSample(Dose Dose, Estimate Body, Estimate Reading);
