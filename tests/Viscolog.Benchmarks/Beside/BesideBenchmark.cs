using System.Diagnostics;
using System.Globalization;
using System.Text;
using CsvHelper;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Sampling;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tables;

namespace Viscolog.Benchmarks.Beside;

/// <summary>
/// The same jobs by this program and by what a person would otherwise use for them: NumPy and SciPy, R, CsvHelper, and a program that does
/// nothing. One table, every row a ratio from one run.
/// </summary>
internal static class BesideBenchmark
{
    private const int Rows = 1_000_000;
    private const int Starts = 15;
    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(1);

    /// <summary>What the program does when it has nothing to do.</summary>
    public const string Nothing = "nothing";

    public static int Run(string? program)
    {
        var folder = Directory.CreateTempSubdirectory("viscolog-beside-").FullName;
        try
        {
            Console.WriteLine("| job | here, ms | beside it, ms | ratio | beside it stands | agree to |");
            Console.WriteLine("|---|---|---|---|---|---|");
            Fits(folder);
            Imports(folder);
            Begin(folder, program ?? Path.Combine(AppContext.BaseDirectory, "viscolog.dll"));
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Fits(string folder)
    {
        var run = Read(BesideData.Run);
        var posterior = ((PosteriorOutcome.Found)Posteriors.OfCurve(run, run.Target?.Band, [])).Posterior;
        (double Z, double U)[] series =
        [
            .. posterior.Evidence.Steps.SelectMany(s => s.Readings.Select(r => (s.Dose / posterior.Evidence.RangeTop, r.Ln))),
        ];
        var (seriesPath, flowPath) = (Path.Combine(folder, "series.csv"), Path.Combine(folder, "flow.csv"));
        Write(seriesPath, "z,u", series);
        Write(flowPath, "rate,stress", BesideData.Flow);
        var (four, flow) = (new FourParameters(series), new YieldAndPower(BesideData.Flow));
        string[] words = [seriesPath, flowPath];
        string[] draws = [Whole(SamplingEffort.Full.FirstDraws), Whole(SamplingEffort.Full.LaterDraws)];
        var here = AppContext.BaseDirectory;
        foreach (var (name, said) in new[]
        {
            ("NumPy and SciPy", Answers("python3", [Path.Combine(here, "peers", "beside.py"), .. words, .. draws])),
            ("R", Answers("Rscript", [Path.Combine(here, "peers", "beside.R"), .. words])),
        })
        {
            if (said.Count == 0)
            {
                Console.Error.WriteLine($"{name}: not installed, or ended with an error; left out");
                continue;
            }

            Compare("four-parameter curve, 12 readings", "four", Median(() => four.Fit()), four.Fit());
            Compare("Herschel–Bulkley, 9 points", "flow", Median(() => flow.Fit()), flow.Fit());
            Compare("all shapes with their priors, five starts each", "shapes", Median(() => ShapeFits.Of(posterior)), null);
            Compare(
                "Monte Carlo posterior over all shapes",
                "posterior",
                Median(() => Posteriors.OfCurve(run, run.Target?.Band, [])),
                null);

            void Compare(string job, string key, double ours, double[]? values)
            {
                if (said.TryGetValue(key, out var theirs))
                {
                    Row(job, ours, theirs.Time, name, values is null ? "" : Agreement(values, theirs.Values));
                }
            }
        }
    }

    private static string Agreement(double[] ours, double[] theirs)
        => ours.Zip(theirs, (a, b) => Math.Abs(a - b) / Math.Abs(b)).Max().ToString("0.0E+0", CultureInfo.InvariantCulture);

    private static void Imports(string folder)
    {
        foreach (var rows in new[] { Rows / 100, Rows / 10, Rows })
        {
            var path = Path.Combine(folder, Whole(rows) + ".csv");
            File.WriteAllText(path, BesideData.LongRun(rows));
            var place = new LogPlace(Path.Combine(folder, "log-" + Whole(rows)));
            var typed = Time(() => Typed(path));
            var import = Time(() => Import(place, path));
            var most = Process.GetCurrentProcess().PeakWorkingSet64 / 1e6;
            Row(
                FormattableString.Invariant($"import of {rows} readings, saved and flushed (memory so far {most:0} MB)"),
                import,
                typed,
                "CsvHelper: the same file into typed records, not kept",
                "");
        }
    }

    private static void Import(LogPlace place, string path)
    {
        using var log = BenchLog.Open(place, LogUse.Write, TimeProvider.System, null)
            .Match(l => l, reason => throw new InvalidOperationException(reason));
        var file = ((TableOutcome<RunToImport>.Read)RunFileReader.ParsePacked(path, File.ReadAllBytes(path))).File;
        if (log.Import(file, CancellationToken.None).Outcome is not WriteOutcome.Saved)
        {
            throw new InvalidOperationException("the import failed");
        }
    }

    private static void Typed(string path)
    {
        var bytes = File.ReadAllBytes(path);
        using var reader = CsvReader.Create(
            bytes.AsMemory(bytes.AsSpan().IndexOf("thickener,"u8)), CsvReaderOptions.Default with { Separator = ',' });
        var sum = 0.0;
        foreach (var row in reader.GetRecords<TypedRow>())
        {
            sum += row.Viscosity;
        }

        GC.KeepAlive(sum);
    }

    private static void Begin(string folder, string program)
    {
        var run = Path.Combine(folder, "run.csv");
        File.WriteAllText(run, BesideData.Run);
        string[][] calls = [["--version"], ["advise", run, "--log", Path.Combine(folder, "none")]];
        string[] empty = ["dotnet", Path.Combine(AppContext.BaseDirectory, "Viscolog.Benchmarks.dll"), Nothing];
        foreach (var call in calls)
        {
            string[] ours = [.. program.EndsWith(".dll", StringComparison.Ordinal) ? ["dotnet", program] : new[] { program }, .. call];
            var (mine, idle) = (new double[Starts], new double[Starts]);
            for (var i = 0; i < Starts; i++)
            {
                (mine[i], idle[i]) = (Time(() => Call(ours)), Time(() => Call(empty)));
            }

            Row($"whole program: `{call[0]}`", Middle(mine), Middle(idle), "a program of this runtime that does nothing", "");
        }
    }

    private static void Call(string[] words) => Call(words[0], words[1..]);

    private static string Call(string program, string[] words)
    {
        using var started = Process.Start(new ProcessStartInfo(program, words)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var complaint = started.StandardError.ReadToEndAsync();
        var said = started.StandardOutput.ReadToEnd();
        started.WaitForExit();
        if (started.ExitCode != 0)
        {
            Console.Error.WriteLine($"{program}: {complaint.Result.Trim()}");
        }

        return said;
    }

    private static Dictionary<string, (double Time, double[] Values)> Answers(string program, string[] words)
    {
        try
        {
            return Call(program, words).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split('\t')).ToDictionary(
                p => p[0],
                p => (Number(p[1]), p[2..].Select(Number).ToArray()),
                StringComparer.Ordinal);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return [];
        }
    }

    private static void Write(string path, string names, IEnumerable<(double X, double Y)> rows)
        => File.WriteAllLines(path, [names, .. rows.Select(r => FormattableString.Invariant($"{r.X:R},{r.Y:R}"))]);

    private static Run Read(string text)
        => ((TableOutcome<RunFile>.Read)RunFileReader.Parse("run", Encoding.UTF8.GetBytes(text))).File.Run;

    private static void Row(string job, double here, double there, string what, string agreement)
        => Console.WriteLine(FormattableString.Invariant(
            $"| {job} | {here:0.###} | {there:0.###} | {here / there:0.00} | {what} | {agreement} |"));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static double Time(Action work)
    {
        var start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static double Median(Func<object> work)
    {
        // The compiler comes back to what is called often, in the background.
        var warm = Stopwatch.StartNew();
        for (var i = 0; i < 40 || warm.Elapsed < WarmUp; i++)
        {
            GC.KeepAlive(work());
        }

        return Middle([.. Enumerable.Range(0, 31).Select(_ => Time(() => GC.KeepAlive(work())))]);
    }

    private static double Middle(double[] times) => times.Order().ElementAt(times.Length / 2);
}
