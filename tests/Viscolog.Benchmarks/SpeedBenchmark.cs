using System.Diagnostics;
using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.Benchmarks;

/// <summary>
/// Times one advice on a run file, warm, beside the least-squares report of the same run: medians and their ratio from one process.
/// </summary>
internal static class SpeedBenchmark
{
    private const int Rounds = 40;

    public static int Run(string path)
    {
        if (RunFileReader.Read(path) is not TableOutcome<RunFile>.Read { File.Run: var run })
        {
            Console.Error.WriteLine($"{path}: not a run file that can be read");
            return 2;
        }

        var posterior = ((PosteriorOutcome.Found)Posteriors.OfCurve(run, run.Target?.Band, [])).Posterior;
        var posteriors = Median(() => Posteriors.OfCurve(run, run.Target?.Band, []));
        var advice = Median(() => Study.Of(new(run)));
        var doubled = Median(() => Study.Of(new(run with { Entries = [.. run.Entries, .. run.Entries.Where(e => e is Entry.Measured)] })));
        var fits = Median(() => ShapeFits.Of(posterior));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"one advice {advice:0.0} ms (belief {posteriors:0.0}), least squares of all shapes {fits:0.0} ms, "
                + $"ratio {advice / fits:0.00}; with as many readings again {doubled / advice:0.00} times the time"));
        foreach (var earlier in new[] { 0, 1, 5, 20, 100, 1000 })
        {
            var (time, odd) = (WithHistory(earlier, false), WithHistory(earlier, true));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{earlier,5} earlier runs: {time.Clock:0.0} ms ({time.Processor:0.0} ms of processor time) where they are like "
                    + $"the run, {odd.Clock:0.0} ({odd.Processor:0.0}) where they are not"));
        }

        return 0;
    }

    /// <summary>Times one advice on a practice pot after three doses.</summary>
    private static (double Clock, double Processor) WithHistory(int runs, bool unlike)
    {
        var (pot, _, _, earlier) = new Scenario("own", "none", runs) { UnlikeHistory = unlike }.Make(1005);
        pot.Read(TimeSpan.Zero);
        for (var dose = 0; dose < 3; dose++)
        {
            pot.Add(Mass.FromGrams(1));
            pot.Read(TimeSpan.Zero);
        }

        object Advise() => Study.Of(new(pot.Run) { History = earlier });
        var clock = Median(Advise);
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        for (var i = 0; i < Rounds; i++)
        {
            GC.KeepAlive(Advise());
        }

        process.Refresh();
        return (clock, (process.TotalProcessorTime - before).TotalMilliseconds / Rounds);
    }

    private static double Median(Func<object> work)
    {
        var times = new double[Rounds];
        for (var i = -5; i < Rounds; i++)
        {
            var start = Stopwatch.GetTimestamp();
            GC.KeepAlive(work());
            if (i >= 0)
            {
                times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }
        }

        Array.Sort(times);
        return times[Rounds / 2];
    }
}
