using System.Diagnostics;
using System.Globalization;
using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Plays practice pots of two thickeners to the end with the program's advice and by rules of thumb.</summary>
internal static class PairBenchmark
{
    public static int Run(string[] args)
    {
        var (pots, seed) = ((int)Number(args, "--pots", 90), (int)Number(args, "--seed", 1000));
        var risk = Percentage.FromPercent(Number(args, "--risk", IncrementPolicy.DefaultRisk.Percent));
        Console.WriteLine(FormattableString.Invariant($"{pots} pots from seed {seed}, {string.Join(' ', args)}"));
        Console.WriteLine(
            "player          pots  both in band (95 %)     over in either (95 %)   body in/over     string in/over   "
                + "additions      reads of body, string");
        if (!args.Contains("--advised-only", StringComparer.Ordinal))
        {
            Report("body first", Play(pots, seed, PairPlayers.BodyFirst));
            Report("alternating", Play(pots, seed, PairPlayers.Alternating));
            Report("string first", Play(pots, seed, PairPlayers.StringFirst));
        }

        var watch = Stopwatch.StartNew();
        var results = Play(pots, seed, p => PairPlayers.Advised(p, risk));
        watch.Stop();
        Report("advised", results);
        Groups(results, r => r.Family.Split(',')[0]);
        Groups(results, r => r.Family.Split(", ")[1]);
        Groups(results, r => r.Family.Split(", ")[2]);
        Groups(results, r => "end " + r.End);
        Groups(results, r => r.LetDowns == 0 ? "no let-down" : "let down");
        var held = results.SelectMany(r => r.Held.Skip(1)).ToArray();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"90 % interval held from the second addition on: body {100.0 * held.Count(h => h.Body) / held.Length:0.0} %, "
                + $"string {100.0 * held.Count(h => h.String) / held.Length:0.0} % of {held.Length}"));
        var calls = results.Sum(r => r.Calls);
        Console.WriteLine(
            FormattableString.Invariant(
                $"{calls} advice calls, {watch.Elapsed.TotalMilliseconds / calls:0.0} ms each, all cores together"));
        return 0;
    }

    private static PairPlayed[] Play(int pots, int seed, Func<PracticePair, PairPlayed> player)
    {
        var results = new PairPlayed[pots];
        Parallel.For(0, pots, i =>
        {
            var (pot, family) = PairScenario.Make(seed + i);
            var played = player(pot);
            var (band, strings) = (pot.Run.Target!.Band, pot.Run.TargetString!);
            results[i] = played with
            {
                Family = family,
                BodyIn = pot.TrueBody >= band.Low && pot.TrueBody <= band.High,
                BodyOver = pot.TrueBody > band.High,
                StringIn = pot.TrueString >= strings.Low && pot.TrueString <= strings.High,
                StringOver = pot.TrueString > strings.High,
            };
        });
        return results;
    }

    private static void Groups(PairPlayed[] results, Func<PairPlayed, string> by)
    {
        foreach (var group in results.GroupBy(by, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Report("  " + group.Key, [.. group]);
        }
    }

    private static void Report(string player, PairPlayed[] results)
    {
        var additions = results.Average(r => r.Additions);
        var error = 1.96 * Math.Sqrt(results.Average(r => (r.Additions - additions) * (r.Additions - additions)) / results.Length);
        double Percent(Func<PairPlayed, bool> which) => 100.0 * results.Count(which) / results.Length;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{player,-18}{results.Length,5}  {Wilson.Share(results.Count(r => r.BothIn), results.Length),-22}  "
                + $"{Wilson.Share(results.Count(r => r.Over), results.Length),-22}  "
                + $"{Percent(r => r.BodyIn),5:0.0}/{Percent(r => r.BodyOver),4:0.0} %    "
                + $"{Percent(r => r.StringIn),5:0.0}/{Percent(r => r.StringOver),4:0.0} %    {additions,5:0.00} ± {error:0.00} "
                + $"{results.Average(r => r.BodyReads),8:0.00} {results.Average(r => r.StringReads),6:0.00}"));
    }

    private static double Number(string[] args, string name, double fallback)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? double.Parse(args[at + 1], CultureInfo.InvariantCulture) : fallback;
    }
}
