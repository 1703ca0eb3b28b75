using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Curves;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;

namespace Viscolog.Benchmarks;

/// <summary>
/// Fits the priors of the shapes to laws of many kinds: expectation and maximization over whole runs (Dempster, Laird and Rubin, Journal of
/// the Royal Statistical Society B 39 (1977) 1–38). Each round takes the posterior of every run under the priors of the round before; a
/// shape's new weight is the mean of its posterior weights, its parameters' new means and deviations are those of all runs' draws together.
/// </summary>
internal static class ShapePriors
{
    private const int Doses = 8;

    /// <summary>No weight falls below this part of an ordinary shape's: pots of kinds not fitted come too.</summary>
    private const double LeastWeight = 0.5;

    public static int Run(string[] args)
    {
        int Number(string name, int fallback) => Array.IndexOf(args, name) is var at and >= 0
            ? int.Parse(args[at + 1], System.Globalization.CultureInfo.InvariantCulture)
            : fallback;
        var (rounds, perKind, leftOut) = (Number("--rounds", 3), Number("--laws", 30), Number("--without", -1));
        var runs = Runs(perKind, leftOut).ToArray();
        Console.WriteLine(FormattableString.Invariant($"{runs.Length} runs, {Doses} doses each, kind left out: {leftOut}"));
        var fitted = Shapes.All.Select(s => new FittedShape(
            s.PriorWeight / Shapes.All.Sum(x => x.PriorWeight),
            CurveParameters.Row(s.Parameters.Select(p => Math.Log(p.Median)), 0, Math.Log(s.DiscrepancyMedian)),
            CurveParameters.Row(s.Parameters.Select(p => p.LogSd), 1, s.DiscrepancyLogSd))).ToArray();
        for (var round = 1; round <= rounds; round++)
        {
            var prior = Prior.Of([.. fitted.Select(f => new Mixture([GaussianComponent.Independent(f.Weight, f.Mean, f.Sd)]))]);
            var said = runs.AsParallel().AsOrdered()
                .Select(r => new SampledCurves(r, r.RangeTop, prior, null, SamplingEffort.Moments))
                .Select(s => (Moments: s.Moments(), s.LogEvidence)).ToArray();
            Console.WriteLine(FormattableString.Invariant($"round {round}: mean log evidence {said.Average(s => s.LogEvidence):0.000}"));
            fitted = [.. fitted.Select((f, s) => f.After([.. said.Select(m => m.Moments[s])]))];
        }

        for (var s = 0; s < fitted.Length; s++)
        {
            var (shape, mean, sd) = (Shapes.All[s], fitted[s].Mean, fitted[s].Sd);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{shape.Name}: weight {fitted[s].Weight * Shapes.All.Length:0.00} of an even share "
                    + $"({shape.PriorWeight / Shapes.All.Sum(x => x.PriorWeight) * Shapes.All.Length:0.00})"));
            for (var j = 0; j < shape.Parameters.Length; j++)
            {
                var p = shape.Parameters[j];
                Console.WriteLine(
                    FormattableString.Invariant($"  {p.Name}: {Math.Exp(mean[j]):0.###}, {sd[j]:0.##} ({p.Median:0.###}, {p.LogSd:0.##})"));
            }

            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  discrepancy: {Math.Exp(mean[^1]):0.###}, {sd[^1]:0.##} "
                    + $"({shape.DiscrepancyMedian:0.###}, {shape.DiscrepancyLogSd:0.##})"));
        }

        return 0;
    }

    /// <summary>Runs of the even kinds of real materials, as many as of our own families together.</summary>
    private static IEnumerable<Evidence> Runs(int perKind, int leftOut)
    {
        for (var kind = 0; kind < RealLaws.Count; kind += 2)
        {
            for (var i = 0; i < perKind && kind != leftOut; i++)
            {
                yield return Played(RealLaws.Draw(kind, new Random((7919 * kind) + i)), (104729 * kind) + i);
            }
        }

        for (var i = 0; i < perKind * RealLaws.Count / 2; i++)
        {
            yield return Played(HiddenLaws.Draw(i % HiddenLaws.FamilyCount, new Random(60000 + i)), 70000 + i);
        }
    }

    /// <summary>A run read at doses spread evenly over the useful range.</summary>
    private static Evidence Played(HiddenLaw law, int seed)
    {
        var run = new Run(new("practice base"), Mass.FromGrams(200)) { Thickeners = [new Thickener("T")] };
        var pot = new PracticePot(law, new PracticeErrors(0.04, 0.02, 0), run, seed);
        pot.Read(TimeSpan.Zero);
        var step = run.BaseMass.Grams * run.Thickeners[0].UsualRange.Top.Percent / 100 * law.Useful / Doses;
        for (var i = 0; i < Doses; i++)
        {
            pot.Add(Mass.FromGrams(Math.Round(step, 2)));
            pot.Read(TimeSpan.FromSeconds(60));
        }

        return ((EvidenceOutcome.Usable)Evidence.Of(pot.Run, pot.Run.Thickeners[0])).Evidence;
    }

    private sealed record FittedShape(double Weight, double[] Mean, double[] Sd)
    {
        /// <summary>Nuisances keep their standard normal; only the shape's numbers and the discrepancy are fitted.</summary>
        public FittedShape After(ImmutableArray<ShapeMoments?> said)
        {
            var weight = said.Sum(m => m?.Weight ?? 0);
            var shapeNumbers = Mean.Length - Nuisances.Count - 1;
            var (mean, sd) = ((double[])Mean.Clone(), (double[])Sd.Clone());
            foreach (var j in Enumerable.Range(0, shapeNumbers).Append(Mean.Length - 1))
            {
                // Two runs' worth of the prior in use keeps a shape that few runs have from narrowing to them.
                const double Own = 2;
                mean[j] = (said.Sum(m => m is null ? 0 : m.Weight * m.Mean[j]) + (Own * Mean[j])) / (weight + Own);
                var spread = said.Sum(m => m is null ? 0 : m.Weight * (m.Covariance[j, j] + Math.Pow(m.Mean[j] - mean[j], 2)));
                sd[j] = Math.Sqrt((spread + (Own * (Math.Pow(Sd[j], 2) + Math.Pow(Mean[j] - mean[j], 2)))) / (weight + Own));
            }

            return new(Math.Max(weight / said.Length, LeastWeight / Shapes.All.Length), mean, sd);
        }
    }
}
