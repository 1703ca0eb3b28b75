using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Viscolog.RunFiles;
using Viscolog.Sharing;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tables;
using Viscolog.Tests.Support;

namespace Viscolog.Benchmarks;

/// <summary>
/// Many benches share their logs at once, each a program of its own, on one PostgreSQL server: whether all come to know the same, how many
/// lines a second that takes, how soon a reading is seen elsewhere, and what sharing costs who saves.
/// </summary>
internal static class ShareBenchmark
{
    private const int Seen = 100;
    private const int Saves = 2000;

    public static int Run(string[] sizes)
    {
        var (benches, runs, readings) = (Size(sizes, 0, 50), Size(sizes, 1, 200), Size(sizes, 2, 20));
        using var server = new LocalPostgres();
        if (!server.IsInstalled)
        {
            Console.Error.WriteLine("PostgreSQL is not installed: there is nothing to measure");
            return 1;
        }

        var folder = Directory.CreateTempSubdirectory("viscolog-share-").FullName;
        string[] names = [.. Enumerable.Range(1, benches).Select(i => FormattableString.Invariant($"b{i}"))];
        var database = server.Database(Viscolog("share", "setup"), names);
        LogPlace[] logs = [.. names.Select(n => new LogPlace(Path.Combine(folder, n)))];
        foreach (var (place, i) in logs.Select((p, i) => (p, i)))
        {
            Fill(place, i, runs, readings);
            Console.Error.Write(FormattableString.Invariant($"\r{i + 1} of {benches} logs"));
        }

        Console.Error.WriteLine();
        var lines = logs.Sum(l => (long)File.ReadLines(l.Journal).Count());
        var sending = Stopwatch.StartNew();
        var joined = AtOnce(
            names,
            i => ["share", "join", database.Address(names[i]), "--bench", names[i], "--json", "--log", logs[i].Folder]);
        var sent = sending.Elapsed;
        var fetching = Stopwatch.StartNew();
        var shared = AtOnce(names, i => ["share", "--json", "--log", logs[i].Folder]);
        var fetched = fetching.Elapsed;
        var states = shared.Select(s => Field(s, "state")).Distinct(StringComparer.Ordinal).Count();
        var there = database.Count("select * from viscolog.line");
        var known = joined.Concat(shared).Sum(s => long.Parse(Field(s, "fetched"), CultureInfo.InvariantCulture));
        Console.WriteLine(FormattableString.Invariant(
            $"{benches} benches of {runs} runs of {readings} readings, each a program, all at once on one server:"));
        Console.WriteLine(FormattableString.Invariant(
            $"  lines in the journals {lines}, on the server {there}, fetched by others {known}, states {states}"));
        Console.WriteLine(FormattableString.Invariant(
            $"  joined and sent in {sent.TotalSeconds:0.0} s, {lines / sent.TotalSeconds:0} lines/s (fetching meanwhile what was there)"));
        var both = (sent + fetched).TotalSeconds;
        Console.WriteLine(FormattableString.Invariant(
            $"  both rounds {both:0.0} s, {(lines + known) / both:0} lines/s sent or fetched and checked"));
        Latency(logs[0], logs[1]);
        Saving(logs[0], folder);
        Directory.Delete(folder, recursive: true);
        return there == lines && states == 1 && known == lines * (benches - 1) ? 0 : 1;
    }

    private static int Size(string[] sizes, int place, int usual)
        => sizes.Length > place ? int.Parse(sizes[place], CultureInfo.InvariantCulture) : usual;

    private static void Fill(LogPlace place, int bench, int runs, int readings)
    {
        using var log = Open(place);
        for (var run = 0; run < runs; run++)
        {
            var text = new StringBuilder(FormattableString.Invariant(
                $"# name: gel {bench} {run}\n# base: Gable\n# base_g: 120\n# thickener: TA\nadded_g,wait_s,viscosity_mpas\n"));
            for (var i = 0; i < readings; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $"0.1,60,{800 + (100 * i)}\n");
            }

            log.Begin(((TableOutcome<RunFile>.Read)RunFileReader.Parse("run", Encoding.UTF8.GetBytes(text.ToString()))).File);
        }
    }

    /// <summary>From the moment when a reading is saved at one bench to the moment when it is in what another knows.</summary>
    private static void Latency(LogPlace from, LogPlace to)
    {
        using var log = Open(from);
        using var there = Open(to);
        using var sending = SharePost.Of(log, TimeProvider.System)!;
        using var seeing = SharePost.Of(there, TimeProvider.System)!;
        using var came = new AutoResetEvent(false);
        seeing.Changed += (_, _) =>
        {
            if (seeing.State.Report?.Fetched > 0)
            {
                came.Set();
            }
        };
        Thread.Sleep(8000);
        var times = new List<double>();
        var random = new Random(1);
        for (var i = 0; i < Seen; i++)
        {
            came.Reset();
            var watch = Stopwatch.StartNew();
            log.Add(1, new() { Note = "seen" });
            if (came.WaitOne(20_000))
            {
                times.Add(watch.Elapsed.TotalSeconds);
            }

            Thread.Sleep(random.Next(400));
        }

        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  a reading is seen at another bench after {times[times.Count / 2]:0.00} s (median of {times.Count}), "
                + $"{times[^1]:0.00} s at worst"));
    }

    /// <summary>The time to save a row, joined and not, in turns.</summary>
    private static void Saving(LogPlace joined, string folder)
    {
        var alone = new LogPlace(Path.Combine(folder, "alone"));
        File.Copy(joined.Journal, Path.Combine(Directory.CreateDirectory(alone.Folder).FullName, Path.GetFileName(alone.Journal)));
        using var with = Open(joined);
        using var without = Open(alone);
        using var post = SharePost.Of(with, TimeProvider.System)!;
        Thread.Sleep(8000);
        var (shared, plain) = (new List<double>(), new List<double>());
        for (var i = 0; i < Saves; i++)
        {
            var (log, times) = i % 2 == 0 ? (with, shared) : (without, plain);
            var begun = Stopwatch.GetTimestamp();
            log.Add(2, new() { Note = "saved" });
            times.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
            Thread.Sleep(i % 50 == 0 ? 20 : 1);
        }

        shared.Sort();
        plain.Sort();
        var (a, b) = (shared[shared.Count / 2], plain[plain.Count / 2]);
        Console.WriteLine(FormattableString.Invariant(
            $"  a row is saved in {a:0.00} ms joined, {b:0.00} ms not (medians in turns), ratio {a / b:0.00}"));
    }

    private static BenchLog Open(LogPlace place) => BenchLog.Open(place, LogUse.Write, TimeProvider.System, null)
        .Match(log => log, reason => throw new InvalidOperationException(reason));

    private static string Field(string json, string name)
    {
        using var document = JsonDocument.Parse(json);
        return document.RootElement.GetProperty(name).ToString();
    }

    /// <summary>What so many programs answer that run at once.</summary>
    private static string[] AtOnce(string[] names, Func<int, string[]> words)
    {
        var running = names.Select((_, i) => Start(words(i))).ToArray();
        var answers = running.Select(p => p.StandardOutput.ReadToEndAsync()).ToArray();
        foreach (var (program, answer) in running.Zip(answers))
        {
            program.WaitForExit();
            if (program.ExitCode != 0)
            {
                throw new InvalidOperationException(answer.Result);
            }

            program.Dispose();
        }

        return [.. answers.Select(a => a.Result)];
    }

    private static string Viscolog(params string[] words)
    {
        using var program = Start(words);
        var answer = program.StandardOutput.ReadToEnd();
        program.WaitForExit();
        return answer;
    }

    private static Process Start(string[] words)
        => Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "viscolog.dll"), .. words])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
        })!;
}
