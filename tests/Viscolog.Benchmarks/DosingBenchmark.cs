using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Plays practice pots to the end with the program's advice and with other players, and counts what came of it.</summary>
internal static class DosingBenchmark
{
    public static int Run(string[] args)
    {
        var (pots, seed) = ((int)Number(args, "--pots", 90), (int)Number(args, "--seed", 1000));
        var risk = Number(args, "--risk", IncrementPolicy.DefaultRisk.Percent);
        var scenario = new Scenario(Has("--tau"), Has("--drift"), Has("--published"), (int)Number(args, "--history", 0), Has("--unlike"), Has("--thin"));
        Console.WriteLine(FormattableString.Invariant($"{pots} pots from seed {seed}, {string.Join(' ', args)}"));
        Console.WriteLine("player          pots  in band (95 %)          over (95 %)             short   doses          reads  waits  grams  90 % holds");
        if (!Has("--advised-only"))
        {
            Report("1 % steps", Play(scenario, pots, seed, (p, _) => SimplePlayers.Fixed(p, 1)));
            Report("0.25 % steps", Play(scenario, pots, seed, (p, _) => SimplePlayers.Fixed(p, 0.25)));
            Report("0.1 % steps", Play(scenario, pots, seed, (p, _) => SimplePlayers.Fixed(p, 0.1)));
            Report("extrapolated", Play(scenario, pots, seed, (p, _) => SimplePlayers.Extrapolated(p, 1)));
            Report("damped by 0.7", Play(scenario, pots, seed, (p, _) => SimplePlayers.Extrapolated(p, 0.7)));
        }

        if (Has("--ideal"))
        {
            var ideal = new IdealPlayer();
            Report("ideal", Play(scenario, pots, seed, (p, _) => ideal.Play(p, risk / 100)));
        }

        var watch = Stopwatch.StartNew();
        var results = Play(scenario, pots, seed, (p, earlier) => AdvisedPlayer.Play(p, Percentage.FromPercent(risk), earlier));
        watch.Stop();
        Report("advised", results);
        foreach (var family in results.GroupBy(r => r.Family, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Report("  " + family.Key, [.. family]);
        }

        Calibration(results);
        var calls = results.Sum(r => r.Played.Calls);
        Console.WriteLine(FormattableString.Invariant($"{calls} advice calls, {watch.Elapsed.TotalMilliseconds / calls:0.0} ms each, all cores together"));
        return 0;

        bool Has(string name) => args.Contains(name, StringComparer.Ordinal);
    }

    private static PlayedPot[] Play(Scenario scenario, int pots, int seed, Func<PracticePot, System.Collections.Immutable.ImmutableArray<Run>, Played> player)
    {
        var results = new ConcurrentDictionary<int, PlayedPot>();
        Parallel.For(0, pots, i =>
        {
            var (pot, band, family, earlier) = scenario.Make(seed + i);
            var played = player(pot, earlier);
            var body = pot.TrueBody;
            results[i] = new(family, body >= band.Low && body <= band.High, body > band.High, pot.Run.PotNow().In("T").Grams, played);
        });
        return [.. results.OrderBy(r => r.Key).Select(r => r.Value)];
    }

    private static void Report(string player, PlayedPot[] results)
    {
        double Mean(Func<Played, int> what) => results.Average(r => what(r.Played));
        var held = results.SelectMany(r => r.Played.Held.Skip(1)).ToArray();
        var cover = held.Length == 0 ? "" : FormattableString.Invariant($"{100.0 * held.Count(h => h) / held.Length,4:0.0} %");
        var doses = Mean(p => p.Doses);
        var error = 1.96 * Math.Sqrt(results.Average(r => (r.Played.Doses - doses) * (r.Played.Doses - doses)) / results.Length);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{player,-15}{results.Length,5}  {Share(results, r => r.InBand),-22}  {Share(results, r => r.Over),-22}  {100.0 * results.Count(r => r.Short) / results.Length,4:0.0} %  {doses,5:0.00} ± {error:0.00} {Mean(p => p.Reads),8:0.00} {Mean(p => p.Waits),6:0.00} {results.Average(r => r.Grams),6:0.00}  {cover}"));
    }

    /// <summary>How often the 90 % interval of the body after a dose held, dose by dose.</summary>
    private static void Calibration(PlayedPot[] results)
    {
        for (var dose = 0; dose < 8; dose++)
        {
            var held = results.Where(r => r.Played.Held.Count > dose).Select(r => r.Played.Held[dose]).ToArray();
            if (held.Length >= 20)
            {
                Console.WriteLine(FormattableString.Invariant($"  dose {dose + 1}: 90 % interval held {100.0 * held.Count(h => h) / held.Length:0.0} % of {held.Length}"));
            }
        }
    }

    private static string Share(PlayedPot[] results, Func<PlayedPot, bool> which) => Wilson.Share(results.Count(which), results.Length);

    private static double Number(string[] args, string name, double fallback)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? double.Parse(args[at + 1], CultureInfo.InvariantCulture) : fallback;
    }
}
