using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Plays practice pots to the end with the program's advice and with simple rules, and counts what came of it.</summary>
internal static class DosingBenchmark
{
    private const int MostMoves = 60;

    public static int Run(string[] args)
    {
        var pots = Number(args, "--pots", 120);
        var seed = (int)Number(args, "--seed", 1000);
        var risk = Number(args, "--risk", IncrementPolicy.DefaultRisk.Percent);
        var withBuildUp = args.Contains("--tau", StringComparer.Ordinal);
        Console.WriteLine(FormattableString.Invariant($"{pots} pots from seed {seed}, {(withBuildUp ? "build-up 6 to 60 s" : "settled")}, risk {risk} %"));
        Console.WriteLine("player        pots  in band    over   short  doses  reads  waits  cover");
        Report("1 % steps", Play(pots, seed, withBuildUp, p => Steps(p, 1)));
        Report("0.25 % steps", Play(pots, seed, withBuildUp, p => Steps(p, 0.25)));
        var watch = Stopwatch.StartNew();
        var results = Play(pots, seed, withBuildUp, p => Advised(p, Percentage.FromPercent(risk)));
        watch.Stop();
        Report("advised", results);
        foreach (var family in results.GroupBy(r => r.Family, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Report("  " + family.Key, [.. family]);
        }

        var calls = results.Sum(r => r.Calls);
        Console.WriteLine(FormattableString.Invariant($"{calls} advice calls, {watch.Elapsed.TotalMilliseconds * Environment.ProcessorCount / calls:0.0} ms of one core each"));
        return 0;
    }

    private static Result[] Play(double pots, int seed, bool withBuildUp, Func<PracticePot, Played> player)
    {
        var results = new ConcurrentDictionary<int, Result>();
        Parallel.For(0, (int)pots, i =>
        {
            var (pot, band, family) = Make(seed + i, withBuildUp);
            var played = player(pot);
            var body = pot.TrueBody;
            results[i] = new(family, body >= band.Low && body <= band.High, body > band.High, played);
        });
        return [.. results.OrderBy(r => r.Key).Select(r => r.Value)];
    }

    private static (PracticePot Pot, ViscosityBand Band, string Family) Make(int seed, bool withBuildUp)
    {
        var random = new Random(seed);
        var law = HiddenLaws.Draw(seed % HiddenLaws.FamilyCount, random);
        var place = 0.3 + (0.6 * random.NextDouble());
        var aim = Viscosity.FromLn(law.LnBody(place));
        var tau = withBuildUp ? Math.Exp(Math.Log(6) + (random.NextDouble() * Math.Log(10))) : 0;
        var thickener = new Thickener("T") { Chemistry = ThickenerChemistry.AlkaliSwellable };
        var run = new Run(new("practice base"), Mass.FromGrams(200)) { Thickeners = [thickener], Target = new Target.Value(aim, null) };
        return (new PracticePot(law, new(0.04, 0.02, tau), run, seed + 7), run.Target.Band, law.Family);
    }

    private static Played Steps(PracticePot pot, double percent)
    {
        var low = pot.Run.Target!.Band.Low;
        var doses = 0;
        pot.Read(TimeSpan.Zero);
        while (doses < MostMoves && LastRead(pot) < low)
        {
            pot.Add(Mass.FromGrams(pot.Run.BaseMass.Grams * percent / 100));
            pot.Read(TimeSpan.FromSeconds(300));
            doses++;
        }

        return new(doses, doses + 1, 0, 0, 0, 0);
    }

    private static Viscosity LastRead(PracticePot pot)
        => ((Core.Measuring.InstrumentValue.Direct)((Entry.Measured)pot.Run.Entries[^1]).Reading.Value!).Viscosity;

    private static Played Advised(PracticePot pot, Percentage risk)
    {
        int doses = 0, reads = 1, waits = 0, calls = 0, covered = 0, forecasts = 0;
        pot.Read(TimeSpan.Zero);
        for (var move = 0; move < MostMoves; move++)
        {
            calls++;
            var advised = (AdviceOutcome.Advised)Advisor.Advise(new(pot.Run) { Risk = risk });
            switch (advised.Advice.Action)
            {
                case BenchAction.Add add:
                    pot.Add(add.Poured);
                    doses++;
                    forecasts += doses > 1 ? 1 : 0;
                    covered += doses > 1 && pot.TrueBody >= add.Expected.Low && pot.TrueBody <= add.Expected.High ? 1 : 0;
                    pot.Read(add.Standing > TimeSpan.FromSeconds(20) ? TimeSpan.FromSeconds(20) : add.Standing);
                    break;
                case BenchAction.Wait wait:
                    pot.Read(wait.More);
                    waits++;
                    break;
                case BenchAction.Measure measure:
                    pot.Read(measure.Standing ?? TimeSpan.FromSeconds(15));
                    break;
                default:
                    return new(doses, reads, waits, calls, covered, forecasts);
            }

            reads++;
        }

        return new(doses, reads, waits, calls, covered, forecasts);
    }

    private static void Report(string player, Result[] results)
    {
        double Share(Func<Result, bool> which) => 100.0 * results.Count(which) / results.Length;
        double Mean(Func<Played, int> what) => results.Average(r => what(r.Played));
        var forecasts = results.Sum(r => r.Played.Forecasts);
        var cover = forecasts == 0 ? "" : FormattableString.Invariant($"{100.0 * results.Sum(r => r.Played.Covered) / forecasts,4:0} %");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{player,-13}{results.Length,5}{Share(r => r.InBand),7:0.0} %{Share(r => r.Over),6:0.0} %{Share(r => !r.InBand && !r.Over),6:0.0} %{Mean(p => p.Doses),7:0.00}{Mean(p => p.Reads),7:0.00}{Mean(p => p.Waits),7:0.00} {cover}"));
    }

    private static double Number(string[] args, string name, double fallback)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? double.Parse(args[at + 1], CultureInfo.InvariantCulture) : fallback;
    }

    private sealed record Played(int Doses, int Reads, int Waits, int Calls, int Covered, int Forecasts);

    private sealed record Result(string Family, bool InBand, bool Over, Played Played)
    {
        public int Calls => Played.Calls;
    }
}
