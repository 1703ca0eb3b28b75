using System.Globalization;
using MathNet.Numerics.Distributions;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>
/// How often a verdict is wrong: batches whose true body is spread evenly over twice the band, so that half of them lie outside and many
/// near a limit, read by benches that scatter more or less than the file says.
/// </summary>
internal static class VerdictBenchmark
{
    private const double Aim = 9000;

    /// <summary>What a thermometer that is off by 0.2 °C does to ln body, at 2000 K and 23 °C.</summary>
    private const double ThermometerSd = 2000 * 0.2 / (296.15 * 296.15);

    /// <summary>What the files say of the scatter.</summary>
    private enum Told
    {
        Nothing,
        History,
        Truth,
    }

    public static int Run(string[] args)
    {
        var (batches, seed) = (Number(args, "--batches", 4000), Number(args, "--seed", 1));
        Console.WriteLine(FormattableString.Invariant($"{batches} batches a line from seed {seed}, true body even over twice the band"));
        Console.WriteLine(
            "band   scatter  readings  told      accepted  of them outside (95 %)     rejected  of them inside (95 %)      undecided");
        var lines =
            from told in Enum.GetValues<Told>()
            from band in new[] { 15, 10 }
            from scatter in new[] { 2, 4, 8, 12 }
            from readings in new[] { 1, 2, 3, 5 }
            select (told, band, scatter, readings);
        foreach (var (told, band, scatter, readings) in lines.Where(l => l.told == Told.Nothing || l.readings == 3))
        {
            var known = told == Told.Nothing ? "nothing" : told == Told.Truth ? "stated" : "history";
            Report(Play(batches, seed, told, (band / 100.0, scatter / 100.0, readings)), FormattableString.Invariant(
                $"±{band} %  {scatter,4} %  {readings,6}     {known,-9}"));
        }

        return 0;
    }

    private static (Verdict Verdict, bool Inside)[] Play(
        int batches,
        int seed,
        Told told,
        (double Band, double Scatter, int Readings) bench)
    {
        var specification = new Specification("P")
        {
            Body = new Target.Value(Viscosity.FromMilliPascalSeconds(Aim), Percentage.FromFraction(bench.Band)),
            MinimumReadings = 1,
        };
        var limits = specification.Body.Band;
        var (middle, half) = ((limits.Low.Ln + limits.High.Ln) / 2, (limits.High.Ln - limits.Low.Ln) / 2);

        // One stream for all batches of a line: streams of neighbouring seeds go together.
        var random = new Random(seed);
        (double Truth, CheckRequest Request)[] asked = [.. Enumerable.Range(0, batches).Select(_ =>
        {
            var truth = middle + (2 * half * ((2 * random.NextDouble()) - 1));
            return (truth, new CheckRequest(Batch(random, truth, bench.Scatter, bench.Readings), specification, new(2026, 3, 2))
            {
                History = told == Told.History ? [.. Enumerable.Range(0, 6).Select(_ => Batch(random, middle, bench.Scatter, 3))] : [],
                Repeatability = told == Told.Truth ? Percentage.FromFraction(bench.Scatter) : null,
            });
        })];
        return [.. asked.AsParallel().AsOrdered().Select(a => (
            ((CheckOutcome.Checked)BatchChecks.Of(a.Request)).Check.Verdict, a.Truth >= limits.Low.Ln && a.Truth <= limits.High.Ln))];
    }

    private static Run Batch(Random random, double truth, double scatter, int readings)
    {
        var off = Normal.Sample(random, 0, ThermometerSd);
        return new(new("B"), Mass.FromGrams(100))
        {
            Entries = [.. Enumerable.Range(0, readings).Select(_ => new Entry.Measured(new Reading
            {
                Value = new InstrumentValue.Direct(Viscosity.FromLn(truth + off + Normal.Sample(random, 0, scatter))),
                Temperature = Temperature.FromCelsius(23),
            }))],
        };
    }

    private static void Report((Verdict Verdict, bool Inside)[] results, string name)
    {
        var accepted = results.Where(r => r.Verdict is Verdict.Accept).ToArray();
        var rejected = results.Where(r => r.Verdict is Verdict.Reject).ToArray();
        var undecided = results.Length - accepted.Length - rejected.Length;
        Console.WriteLine($"{name} {Share(accepted.Length)}   {Wrong(accepted, r => !r.Inside),-25}  {Share(rejected.Length)}   "
            + $"{Wrong(rejected, r => r.Inside),-25}  {Share(undecided)}");

        string Share(int count) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / results.Length,5:0.0} %");
        static string Wrong((Verdict, bool Inside)[] decided, Func<(Verdict, bool Inside), bool> isWrong)
            => decided.Length == 0 ? "–" : Wilson.Share(decided.Count(isWrong), decided.Length);
    }

    private static int Number(string[] args, string name, int otherwise)
        => Array.IndexOf(args, name) is var at and >= 0 ? int.Parse(args[at + 1], CultureInfo.InvariantCulture) : otherwise;
}
