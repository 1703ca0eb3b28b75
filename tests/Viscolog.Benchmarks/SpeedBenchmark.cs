using System.Diagnostics;
using Viscolog.Core.Advising;
using Viscolog.Core.Curves;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;

namespace Viscolog.Benchmarks;

/// <summary>Times one advice on a run file, warm, beside the least-squares report of the same run: medians and their ratio from one process.</summary>
internal static class SpeedBenchmark
{
    private const int Rounds = 40;

    public static int Run(string path)
    {
        if (RunFileReader.Read(path) is not RunFileOutcome.Read { File.Run: var run })
        {
            Console.Error.WriteLine($"{path}: not a run file that can be read");
            return 2;
        }

        var belief = ((BeliefOutcome.Believed)RunBeliefs.Of(run, run.Target?.Band, [])).Belief;
        var advice = Median(() => Advisor.Advise(new(run)));
        var doubled = Median(() => Advisor.Advise(new(run with { Entries = [.. run.Entries, .. run.Entries.Where(e => e is Entry.Measured)] })));
        var fits = Median(() => ShapeFits.Of(belief));
        Console.WriteLine(FormattableString.Invariant($"one advice {advice:0.0} ms, least squares of all shapes {fits:0.0} ms, ratio {advice / fits:0.00}; with as many readings again {doubled / advice:0.00} times the time"));
        return 0;
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
