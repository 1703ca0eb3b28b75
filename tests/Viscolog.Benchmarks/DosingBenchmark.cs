using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Plays practice pots to the end with the program's advice and with other players, and counts what came of it.</summary>
internal static class DosingBenchmark
{
    public static int Run(string[] args)
    {
        var (pots, seed) = ((int)Number(args, "--pots", 90), (int)Number(args, "--seed", 1000));
        var risk = Number(args, "--risk", IncrementPolicy.DefaultRisk.Percent);
        var kind = Has("--published") ? "published" : Word(args, "--kinds", "own");
        var buildUp = Has("--tau") ? "first order" : Has("--stretched") ? "stretched" : Has("--slow") ? "slow" : "none";
        var scenario = new Scenario(kind, buildUp, (int)Number(args, "--history", 0))
        {
            Drift = Has("--drift"),
            UnlikeHistory = Has("--unlike"),
            Thin = Has("--thin"),
            SaidQuick = Has("--said-quick"),
            ReadingSd = Number(args, "--scatter", 4) / 100,
            TemperatureOffset = Number(args, "--warm", 0),
        };
        Console.WriteLine(FormattableString.Invariant($"{pots} pots from seed {seed}, {string.Join(' ', args)}"));
        Console.WriteLine(
            "player          pots  in band (95 %)          over (95 %)             short   doses          reads  waits  grams  90 % holds");
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
        var results = Play(
            scenario,
            pots,
            seed,
            (p, earlier) => AdvisedPlayer.Play(p, Percentage.FromPercent(risk), earlier, Has("--as-told")));
        watch.Stop();
        Report("advised", results);
        foreach (var family in results.GroupBy(r => r.Family, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Report("  " + family.Key, [.. family]);
        }

        Calibration(results);
        var calls = results.Sum(r => r.Played.Calls);
        Console.WriteLine(
            FormattableString.Invariant(
                $"{calls} advice calls, {watch.Elapsed.TotalMilliseconds / calls:0.0} ms each, all cores together"));
        return 0;

        bool Has(string name) => args.Contains(name, StringComparer.Ordinal);
    }

    private static PlayedPot[] Play(
        Scenario scenario,
        int pots,
        int seed,
        Func<PracticePot, System.Collections.Immutable.ImmutableArray<Run>, Played> player)
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
            $"{player,-15}{results.Length,5}  {Share(results, r => r.InBand),-22}  {Share(results, r => r.Over),-22}  "
                + $"{100.0 * results.Count(r => r.Short) / results.Length,4:0.0} %  {doses,5:0.00} ± {error:0.00} "
                + $"{Mean(p => p.Reads),8:0.00} {Mean(p => p.Waits),6:0.00} {results.Average(r => r.Grams),6:0.00}  {cover}"));
    }

    /// <summary>
    /// What was stated against what came: intervals of the body now and after a dose, the chance to go over, the chance at stop.
    /// </summary>
    private static void Calibration(PlayedPot[] results)
    {
        Stated("\"now\" held in its 90 % interval", [.. results.SelectMany(r => r.Played.Now)]);
        Console.WriteLine($"  ever over: {Share(results, r => r.Played.Additions.Any(a => a.Came))}");
        (double Stated, bool Came)[] additions = [.. results.SelectMany(r => r.Played.Additions)];
        Stated("an addition over", additions);
        foreach (var (from, to) in new[] { (0.0, 0.02), (0.02, 0.035), (0.035, 1.0) })
        {
            Stated($"  where stated from {100 * from:0.#} % on", [.. additions.Where(a => a.Stated >= from && a.Stated < to)]);
        }

        Stated("in band at \"stop\"", [.. results.SelectMany(r => r.Played.Stops)]);
        Stated("in band where given up", [.. results.SelectMany(r => r.Played.GivenUp)]);
        for (var dose = 0; dose < 8; dose++)
        {
            var held = results.Where(r => r.Played.Held.Count > dose).Select(r => r.Played.Held[dose]).ToArray();
            if (held.Length >= 20)
            {
                Console.WriteLine(
                    FormattableString.Invariant(
                        $"  dose {dose + 1}: 90 % interval held {100.0 * held.Count(h => h) / held.Length:0.0} % of {held.Length}"));
            }
        }
    }

    private static void Stated(string what, (double Stated, bool Came)[] cases)
    {
        if (cases.Length > 0)
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  {what}: {Wilson.Share(cases.Count(c => c.Came), cases.Length)} of {cases.Length}, "
                    + $"stated {100 * cases.Average(c => c.Stated):0.0} %"));
        }
    }

    private static string Share(PlayedPot[] results, Func<PlayedPot, bool> which) => Wilson.Share(results.Count(which), results.Length);

    private static string Word(string[] args, string name, string fallback)
        => Array.IndexOf(args, name) is var at and >= 0 && at + 1 < args.Length ? args[at + 1] : fallback;

    private static double Number(string[] args, string name, double fallback)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? double.Parse(args[at + 1], CultureInfo.InvariantCulture) : fallback;
    }
}
