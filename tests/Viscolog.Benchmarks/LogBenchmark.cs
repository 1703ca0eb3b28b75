using System.Diagnostics;
using System.Globalization;
using System.Text;
using CsvHelper;
using Viscolog.Core.Advising;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tables;

namespace Viscolog.Benchmarks;

/// <summary>
/// How the log grows: imports beside reading the same file with CsvHelper alone, opening, listing, showing, advising with history,
/// appending.
/// </summary>
internal static class LogBenchmark
{
    private const int RowsARun = 50;
    private const int Appends = 500;

    public static int Run(string[] args)
    {
        int[] sizes = args.Length > 0 ? [.. args.Select(a => int.Parse(a, CultureInfo.InvariantCulture))] : [10_000, 100_000, 1_000_000];
        var folder = Directory.CreateTempSubdirectory("viscolog-bench-").FullName;
        try
        {
            Console.WriteLine("One file:");
            Console.WriteLine(
                $"{"readings",9} {"csv alone s",11} {"import s",9} {"ratio",6} {"open ms",8} {"list ms",8} {"show ms",8} "
                    + $"{"rebuild s",9} {"db MB",6} {"peak MB",8}");
            foreach (var size in sizes)
            {
                OneFile(folder, size);
            }

            Console.WriteLine($"Runs of {RowsARun} readings:");
            Console.WriteLine(
                $"{"readings",9} {"import s",9} {"open ms",8} {"list ms",8} {"show ms",8} {"history ms",10} {"advise ms",9} "
                    + $"{"append ms",9} {"appends/s",9}");
            foreach (var size in sizes)
            {
                ManyRuns(folder, size);
            }

            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void OneFile(string folder, int size)
    {
        var path = Path.Combine(folder, "one.csv");
        File.WriteAllText(path, Csv("one", 0, size));
        var place = new LogPlace(Path.Combine(folder, FormattableString.Invariant($"one-{size}")));
        var alone = Seconds(() => ReadAlone(path));
        var import = Seconds(() => Import(place, path));
        var (open, list, show) = Look(place, 1);
        File.Delete(place.Seal);
        var rebuild = Seconds(() => Open(place, LogUse.Read).Dispose());
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{size,9} {alone,11:0.00} {import,9:0.00} {import / alone,6:0.0} {open,8:0} {list,8:0} {show,8:0} {rebuild,9:0.00} "
                + $"{new FileInfo(place.Copy).Length / 1e6,6:0} {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6,8:0}"));
    }

    private static void ManyRuns(string folder, int size)
    {
        var place = new LogPlace(Path.Combine(folder, FormattableString.Invariant($"many-{size}")));
        var runs = size / RowsARun;
        var import = Seconds(() =>
        {
            using var log = Open(place, LogUse.Write);
            for (var i = 0; i < runs; i++)
            {
                var file = (
                    (TableOutcome<RunFile>.Read)RunFileReader.Parse(
                        "run", Encoding.UTF8.GetBytes(Csv(FormattableString.Invariant($"run {i}"), i % 10, RowsARun)))).File;
                log.Import(file, CancellationToken.None);
            }
        });
        var (open, list, show) = Look(place, runs);
        using var opened = Open(place, LogUse.Write);
        var last = opened.Run(runs)!;
        var earlier = opened.Earlier(last.File.Run, last.Number);
        var history = 1000 * Median(() => opened.Earlier(last.File.Run, last.Number).Length);
        var advise = 1000 * Median(() => Study.Of(new(last.File.Run) { History = earlier }));
        var times = new double[Appends];
        var total = Seconds(() =>
        {
            for (var i = 0; i < Appends; i++)
            {
                times[i] = Seconds(() => opened.Add(1 + (i % runs), new() { Reading = Reading(i) }));
            }
        });
        Array.Sort(times);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{size,9} {import,9:0.00} {open,8:0} {list,8:0} {show,8:0} {history,10:0.0} {advise,9:0.0} "
                + $"{1000 * times[Appends / 2],9:0.0} {Appends / total,9:0}"));
    }

    private static Reading Reading(int i)
        => new() { Value = new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(1000)), Wait = TimeSpan.FromSeconds(10_000 + i) };

    private static (double Open, double List, double Show) Look(LogPlace place, int run)
    {
        using var log = Open(place, LogUse.Read);
        var list = 1000 * Median(() => log.Runs().Count);
        var show = 1000 * Seconds(() => log.Run(run));
        log.Dispose();
        return (1000 * Median(() => { using var again = Open(place, LogUse.Read); return again.Notes; }), list, show);
    }

    private static void Import(LogPlace place, string path)
    {
        using var log = Open(place, LogUse.Write);
        // As the command does it: the rows stay packed.
        var file = ((TableOutcome<RunToImport>.Read)RunFileReader.ParsePacked(path, File.ReadAllBytes(path))).File;
        if (log.Import(file, CancellationToken.None).Outcome is not WriteOutcome.Saved)
        {
            throw new InvalidOperationException("the import failed");
        }
    }

    private static BenchLog Open(LogPlace place, LogUse use) => BenchLog.Open(place, use, TimeProvider.System, null)
        .Match(log => log, reason => throw new InvalidOperationException(reason));

    /// <summary>The fair other side: CsvHelper goes through every cell of the same file.</summary>
    private static void ReadAlone(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var table = bytes.AsMemory(bytes.AsSpan().IndexOf("thickener,"u8));
        using var reader = CsvReader.Create(table, CsvReaderOptions.Default with { Separator = ',' });
        reader.ReadHeader();
        var sum = 0.0;
        while (reader.Read())
        {
            for (var i = 0; i < reader.FieldCount; i++)
            {
                var text = reader.GetString(i);
                sum += text.Length > 0 && double.TryParse(text, CultureInfo.InvariantCulture, out var value) ? value : 0;
            }
        }

        GC.KeepAlive(sum);
    }

    private static string Csv(string name, int @base, int rows)
    {
        var text = new StringBuilder(
            FormattableString.Invariant($"# name: {name}\n# base: Base {@base}\n# base_g: 120\n# thickener: TA\n# target_mpas: 12000\n")
                + "thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,note\n");
        for (var i = 0; i < rows; i++)
        {
            // Six doses to a run, then readings of the last one again.
            text.Append(i is > 0 and < 7 ? "TA,0.6,10," : ",,,").Append(
                CultureInfo.InvariantCulture, $"{60 + i},{850 * Math.Pow(1.45, Math.Min(i, 6)) * (1 + (0.01 * (i % 3))):0.0},23.1,\n");
        }

        return text.ToString();
    }

    private static double Seconds(Action work)
    {
        var start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static double Median<T>(Func<T> work)
    {
        var times = new double[5];
        for (var i = 0; i < times.Length; i++)
        {
            times[i] = Seconds(() => GC.KeepAlive(work()));
        }

        Array.Sort(times);
        return times[2];
    }
}
