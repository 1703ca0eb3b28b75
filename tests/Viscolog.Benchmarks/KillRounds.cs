using System.Diagnostics;
using System.Globalization;
using System.Text;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tables;

namespace Viscolog.Benchmarks;

/// <summary>
/// Kills programs that add to a log, listen to an instrument and log what it reads, import, back up, restore or make the query copy anew,
/// at random moments, and looks at what is left: nothing acknowledged may be missing, nothing may be there that was never sent, and the log
/// must open. On a busy machine the moments come so many times later.
/// </summary>
internal sealed class KillRounds(string folder, int seed, int slow)
{
    private readonly LogPlace _place = new(Path.Combine(folder, "log"));
    private readonly Random _random = new(seed);
    private readonly HashSet<string> _imported = new(StringComparer.Ordinal);
    private int _next = 1;
    private int _shown = 4000;
    private int _acknowledged;
    private int _lost;
    private int _false;
    private int _refused;
    private int _killed;

    public static int Run(string[] args)
    {
        var rounds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 200;
        var folder = Directory.CreateTempSubdirectory("viscolog-kill-").FullName;
        var test = new KillRounds(
            folder,
            args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 7,
            args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 1);
        test.Start();
        for (var round = 0; round < rounds; round++)
        {
            test.Round(round);
            Console.Error.Write(FormattableString.Invariant($"\rround {round + 1} of {rounds}"));
        }

        Console.Error.WriteLine();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"rounds {rounds}, killed at work {test._killed}, acknowledged {test._acknowledged}, lost {test._lost}, "
                + $"false {test._false}, refused opens {test._refused}"));
        Directory.Delete(folder, recursive: true);
        return test._lost + test._false + test._refused == 0 ? 0 : 1;
    }

    /// <summary>The program that is killed: adds rows one by one and says of each when it is acknowledged.</summary>
    public static int Append(string log, string first)
    {
        using var opened = Open(new(log), LogUse.Write);
        for (var value = int.Parse(first, CultureInfo.InvariantCulture); ; value++)
        {
            var reading = new Viscolog.Core.Pots.Reading { Value = new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(value)) };
            if (opened.Add(1, new() { Reading = reading }) is WriteOutcome.Saved)
            {
                Console.Out.WriteLine(value);
                Console.Out.Flush();
            }
        }
    }

    private static BenchLog Open(LogPlace place, LogUse use) => BenchLog.Open(place, use, TimeProvider.System, null)
        .Match(log => log, reason => throw new InvalidOperationException(reason));

    private static Process Start(params string[] command)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var word in command)
        {
            start.ArgumentList.Add(word);
        }

        return Process.Start(start)!;
    }

    private static string Program(string name) => Path.Combine(AppContext.BaseDirectory, name);

    private void Start()
    {
        using var log = Open(_place, LogUse.Write);
        foreach (var name in (string[])["killed", "listened to"])
        {
            var text = Encoding.UTF8.GetBytes($"# name: {name}\n# base_g: 100\nviscosity_mpas\n");
            log.Begin(((TableOutcome<RunFile>.Read)RunFileReader.Parse("run", text)).File);
        }
    }

    private void Round(int round)
    {
        switch (round % 7)
        {
            case 0 or 1:
                Appending();
                break;
            case 2:
                Importing(round);
                break;
            case 3:
                // The copy has to be made anew, which a reader does.
                File.Delete(_place.Seal);
                KillAfter(Start(Program("viscolog.dll"), "runs", "--log", _place.Folder), 1500);
                break;
            case 4:
                Restoring();
                break;
            case 5:
                Listening();
                break;
            default:
                KillAfter(Start(Program("viscolog.dll"), "backup", "--keep", "3", "--log", _place.Folder), 500);
                break;
        }

        Check();
    }

    /// <summary>Puts a backup of what is there now in its place: whether that was killed or not, the log says the same.</summary>
    private void Restoring()
    {
        string? path;
        using (var log = Open(_place, LogUse.Read))
        {
            path = LogBackups.Make(log, _place.Backups, 3, DateTimeOffset.UtcNow, null).Made?.Path;
        }

        if (path is not null)
        {
            KillAfter(Start(Program("viscolog.dll"), "restore", path, "--log", _place.Folder), 1500);
        }

        foreach (var aside in Directory.GetDirectories(_place.Folder, "aside-*"))
        {
            Directory.Delete(aside, recursive: true);
        }
    }

    private string KillAfter(Process process, int most, Action? after = null)
    {
        using (process)
        {
            var output = process.StandardOutput.ReadToEndAsync();
            if (!process.WaitForExit(_random.Next(most * slow)))
            {
                _killed++;
                process.Kill();
            }

            process.WaitForExit();
            after?.Invoke();
            return output.Result;
        }
    }

    private void Appending()
    {
        var first = _next;
        var output = KillAfter(
            Start(Program("Viscolog.Benchmarks.dll"), "appends", _place.Folder, FormattableString.Invariant($"{first}")), 1400);
        var acknowledged = output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length;
        _acknowledged += acknowledged;
        if (Rows() is not { } rows)
        {
            return;
        }

        // One row may be in the log although nobody was told any more.
        var there = rows.Count(v => v >= first);
        _lost += Math.Max(0, acknowledged - there);
        _false += Math.Max(0, there - acknowledged - 1);
        _next = first + there;
    }

    /// <summary>A viscometer speaks on standard input, and each reading that comes to rest is logged.</summary>
    private void Listening()
    {
        var before = Rows(2)?.Count ?? 0;
        var listening = Start(
            Program("viscolog.dll"),
            "listen",
            "-",
            "--reads",
            "viscosity_mpas=1; stable=2:S",
            "--log-to",
            "2",
            "--every",
            "0.1",
            "--log",
            _place.Folder);
        var first = _shown + 1;
        using var stop = new CancellationTokenSource();
        var speaking = new Thread(() => Speak(listening.StandardInput, stop.Token));
        speaking.Start();
        var output = KillAfter(listening, 4000, stop.Cancel);
        speaking.Join();
        var acknowledged = output.Split('\n').Count(l => l.EndsWith('}') && l.Contains("\"logged\":\"row ", StringComparison.Ordinal));
        _acknowledged += acknowledged;
        if (Rows(2) is not { } rows)
        {
            return;
        }

        var came = rows[before..];
        _lost += Math.Max(0, acknowledged - came.Count);
        var isSound = came.Count <= acknowledged + 1
            && came.All(v => v >= first && v <= _shown)
            && came.SequenceEqual(came.Distinct().Order());
        _false += isSound ? 0 : 1;
    }

    private void Speak(StreamWriter line, CancellationToken stop)
    {
        try
        {
            while (!stop.IsCancellationRequested)
            {
                _shown++;
                line.Write(FormattableString.Invariant($"{_shown} M\n{_shown} S\n"));
                line.Flush();
                Thread.Sleep(30);
            }
        }
        catch (IOException)
        {
            // Nobody listens any more.
        }
    }

    private void Importing(int round)
    {
        var name = FormattableString.Invariant($"import {round}");
        var path = Path.Combine(folder, "import.csv");
        var text = new StringBuilder($"# name: {name}\n# base_g: 100\nviscosity_mpas,wait_s\n");
        for (var i = 0; i < 20_000; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i + 1},{i}\n");
        }

        File.WriteAllText(path, text.ToString());
        var done = KillAfter(Start(Program("viscolog.dll"), "import", path, "--json", "--log", _place.Folder), 1500)
            .Contains("\"entries\": 20000", StringComparison.Ordinal);
        _acknowledged += done ? 20_000 : 0;
        try
        {
            using var log = Open(_place, LogUse.Read);
            var run = log.Runs().FirstOrDefault(r => r.Header.Name == name);
            _lost += run is null && done ? 20_000 : 0;
            _false += run is not null && run.Entries != 20_000 ? 1 : 0;
            if (run is not null)
            {
                _imported.Add(name);
            }
        }
        catch (InvalidOperationException)
        {
            _refused++;
        }
    }

    private List<int>? Rows(int number = 1)
    {
        try
        {
            using var log = Open(_place, LogUse.Read);
            return
            [
                .. log.Run(number)!.File.Run.Entries.OfType<Viscolog.Core.Pots.Entry.Measured>()
                    .Select(m => (int)((InstrumentValue.Direct)m.Reading.Value!).Viscosity.MilliPascalSeconds),
            ];
        }
        catch (InvalidOperationException e)
        {
            Console.Error.WriteLine(e.Message);
            _refused++;
            return null;
        }
    }

    private void Check()
    {
        if (Rows() is not { } rows)
        {
            return;
        }

        _false += rows.SequenceEqual(Enumerable.Range(1, _next - 1)) ? 0 : 1;
        using (var log = Open(_place, LogUse.Read))
        {
            _lost += _imported.Except(log.Runs().Select(r => r.Header.Name ?? ""), StringComparer.Ordinal).Count();
        }

        foreach (var backup in Directory.Exists(_place.Backups) ? Directory.GetFiles(_place.Backups, "backup-*") : [])
        {
            JournalFile.Scan(backup, new FileInfo(backup).Length, null);
        }
    }
}
