using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Viscolog.Tests.Fuzz;

namespace Viscolog.Benchmarks.Fuzz;

/// <summary>Gives every reader so many inputs, led by which branches of the program they take.</summary>
internal static class FuzzRounds
{
    private const int Piece = 1000;
    private const int MostFaults = 20;

    /// <summary>Runs the rounds in a copy of the program that tells its branches.</summary>
    /// <param name="args">Cases a reader in thousands, and the seed.</param>
    public static int Run(string[] args)
    {
        var (cases, seed) = (Number(args, 0, 1000) * 1000L, Number(args, 1, 1));
        if (Branches.Taken is not null)
        {
            return Rounds(cases, seed);
        }

        var folder = Directory.CreateTempSubdirectory("viscolog-fuzz-").FullName;
        try
        {
            Branches.Copy(folder);
            // Both get what stops the terminal's programs; the copy tells what it has, then this ends.
            using var term = PosixSignalRegistration.Create(PosixSignal.SIGTERM, context => context.Cancel = true);
            using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, context => context.Cancel = true);
            using var copy = Process.Start(Environment.ProcessPath!, Arguments(folder, args));
            copy.WaitForExit();
            return copy.ExitCode;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static List<string> Arguments(string folder, string[] args)
    {
        var name = Path.GetFileName(Environment.GetCommandLineArgs()[0]);
        List<string> call = ["fuzz", .. args];
        // Started by the runtime's own program, or as a program of its own.
        return Path.GetFileNameWithoutExtension(Environment.ProcessPath!) == "dotnet" ?
        [
            Path.Combine(folder, Path.ChangeExtension(name, ".dll")),
            .. call,
        ]
            : throw new NotSupportedException("start it with: dotnet run, or dotnet Viscolog.Benchmarks.dll");
    }

    /// <summary>In turns, so that a round that is stopped early has tried every reader alike.</summary>
    private static int Rounds(long cases, int seed)
    {
        using var stop = new CancellationTokenSource();
        using var term = PosixSignalRegistration.Create(PosixSignal.SIGTERM, context => context.Cancel = Stopped(stop));
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, context => context.Cancel = Stopped(stop));
        var rounds = Reader.All.Select(r => new FuzzRound(r, new Fuzzer(r, seed, Branches.Taken))).ToList();
        while (
            rounds.Exists(r => r.Fuzzer.Cases < cases / r.Part) && rounds.Sum(r => r.Faults) < MostFaults && !stop.IsCancellationRequested)
        {
            foreach (var round in rounds.TakeWhile(_ => !stop.IsCancellationRequested))
            {
                round.Turn(Math.Min(Piece / round.Part, (cases / round.Part) - round.Fuzzer.Cases));
            }
        }

        Console.WriteLine(FormattableString.Invariant($"{Branches.Taken!.Length} branches are told; seed {seed}"));
        Console.WriteLine($"{"reader",-24}{"cases",12}{"taken",12}{"kept",7}{"branches",10}{"slowest ms",12}{"cpu s",8}");
        rounds.ForEach(r => Console.WriteLine(r.Line));
        Console.WriteLine(FormattableString.Invariant($"{rounds.Sum(r => r.Fuzzer.Cases)} cases, {rounds.Sum(r => r.Faults)} faults"));
        return rounds.Exists(r => r.Faults > 0) ? 1 : 0;
    }

    private static bool Stopped(CancellationTokenSource stop)
    {
        stop.Cancel();
        return true;
    }

    private static int Number(string[] args, int place, int otherwise)
        => place < args.Length && int.TryParse(args[place], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : otherwise;
}

/// <summary>One reader's part of the rounds.</summary>
internal sealed class FuzzRound(Reader reader, Fuzzer fuzzer)
{
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(5);

    private TimeSpan _slowest;
    private TimeSpan _all;

    public Fuzzer Fuzzer => fuzzer;

    /// <summary>One in how many inputs it gets.</summary>
    public int Part => reader.IsSlow ? 10 : 1;

    /// <summary>Inputs of which something did not hold.</summary>
    public int Faults { get; private set; }

    /// <summary>What came of it.</summary>
    public string Line => string.Create(
        CultureInfo.InvariantCulture,
        $"{reader.Name,-24}{fuzzer.Cases,12}{fuzzer.Taken,12}{fuzzer.Kept,7}{fuzzer.Branches,10}"
            + $"{_slowest.TotalMilliseconds,12:0}{_all.TotalSeconds,8:0}");

    /// <summary>Tries so many more.</summary>
    public void Turn(long cases)
    {
        // Of the processor's time, since a busy machine makes everything wait.
        var begun = Environment.CpuUsage.TotalTime;
        using var watch = new Timer(_ => Tell(begun), null, Hang, Hang);
        for (var end = fuzzer.Cases + cases; fuzzer.Cases < end;)
        {
            if (fuzzer.Run(end - fuzzer.Cases) is var (input, fault))
            {
                Faults++;
                Console.WriteLine($"{reader.Name}: {fault.GetType().Name}: {fault.Message}\n{Fuzzer.Shown(input)}\n{fault.StackTrace}");
            }
        }

        var took = Environment.CpuUsage.TotalTime - begun;
        _all += took;
        _slowest = took > _slowest ? took : _slowest;
    }

    private void Tell(TimeSpan begun)
    {
        if (Environment.CpuUsage.TotalTime - begun > Hang)
        {
            Console.WriteLine($"{reader.Name}: a turn takes longer than {Hang.TotalSeconds} s: {Fuzzer.Shown(fuzzer.Current)}");
        }
    }
}
