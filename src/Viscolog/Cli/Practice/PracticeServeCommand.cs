using System.Collections.Concurrent;
using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Core.Practice;
using Viscolog.Feeds;
using Viscolog.PracticeFiles;
using Viscolog.RunFiles;
using Viscolog.Wording;

namespace Viscolog.Cli.Practice;

/// <summary>A practice pot whose viscometer and balance speak, for a class without instruments.</summary>
internal sealed class PracticeServeCommand : CalledCommand
{
    public const string Example =
        "printf 'dose=1\\nstir=10\\nend\\n' | dotnet run --project src/Viscolog -- practice serve --pot easy --seed 7";

    /// <summary>The balance shows a pour in so many steps.</summary>
    private const int PourSteps = 10;

    private const double RoomTemperature = 23;

    private readonly PracticeOptions _game = new();
    private readonly Option<string?> _reads = TextOption.Create(
        "--reads", "PATTERN", "How the viscometer's lines are; default: \"viscosity_mpas=1/2; temp_c=3; stable=4:S\".");

    private readonly Option<bool> _terminals = FlagOption.Create(
        "--terminals", "Speak through pseudo terminals, as through serial ports, not over TCP on this machine (Linux).");

    private readonly Option<double?> _interval = NumberOption.Create(
        "--every", "S", "Seconds between two lines; default 1.", new("s", 0.01, 60));

    public PracticeServeCommand()
        : base(
            "serve",
            "Let a practice pot's viscometer and balance speak: lines by the clock, while "
                + "moves are typed, one a line (dose=GRAMS, base=GRAMS, "
                + "stir=SECONDS, end).",
            Example)
        => Take([.. _game.All, _reads, _terminals, _interval]);

    protected override ExitCode Run(Invocation call)
    {
        if (LinePattern.Read(call.Value(_reads) ?? "viscosity_mpas=1/2; temp_c=3; stable=4:S", out var error) is not { } pattern)
        {
            return call.Refuse($"--reads: {error}");
        }

        if (pattern.Write(_ => 1, isStable: true) is null)
        {
            return call.Refuse("--reads: a simulated viscometer says fields, not columns of a line, and no unit but mPa·s, cP, P or Pa·s");
        }

        try
        {
            using var viscometer = LineSpeaker.Open(call.Value(_terminals));
            using var balance = LineSpeaker.Open(call.Value(_terminals));
            return Serve(call, pattern, viscometer, balance);
        }
        catch (IOException e)
        {
            return call.Refuse(e.Message);
        }
    }

    private ExitCode Serve(Invocation call, LinePattern pattern, LineSpeaker viscometer, LineSpeaker balance)
    {
        var session = PracticeSession.Of(_game.Game(call));
        var terminal = call.Terminal;
        PracticeText.Head(terminal, session.Game);
        terminal.Line(Say($"viscometer  {viscometer.Source}  --reads \"{pattern.Show()}\""));
        terminal.Line(Say($"balance     {balance.Source}  --reads \"added_g=1/2\""));
        terminal.Flush();
        using var stop = new StopSignal();
        using var typed = new BlockingCollection<string>();
        _ = Task.Run(() =>
        {
            while (Console.In.ReadLine() is { } line)
            {
                typed.Add(line.Trim());
            }

            typed.CompleteAdding();
        });
        var interval = TimeSpan.FromSeconds(call.Value(_interval) ?? 1);
        while (!session.HasEnded)
        {
            session = Stand(session, interval);
            Speak(pattern, viscometer, session);
            if (stop.Token.WaitHandle.WaitOne(interval))
            {
                return ExitCode.Stopped;
            }

            if (typed.IsCompleted)
            {
                return ExitCode.Done;
            }

            if (typed.TryTake(out var move) && move.Length > 0)
            {
                session = Move(call, session, move, balance, interval);
            }
        }

        terminal.Wrapped(PracticeWords.Ending(PracticePath.Of(PracticePlayer.Person, session)), margin: 2);
        return ExitCode.Done;
    }

    private static PracticeSession Stand(PracticeSession session, TimeSpan time)
        => session.Standing is null ? session : session.Take(new PracticeMove.Wait(time)).Session;

    private static PracticeSession Move(Invocation call, PracticeSession session, string text, LineSpeaker balance, TimeSpan interval)
    {
        if (PracticeMoveText.Read(text, out var error) is not { } move)
        {
            call.Note(error!);
            return session;
        }

        var turn = session.Take(move);
        if (turn.Refusal is { } refusal)
        {
            call.Note(PracticeWords.Of(refusal));
            return session;
        }

        if (move is PracticeMove.Dose dose)
        {
            for (var i = 1; i <= PourSteps; i++)
            {
                balance.Say(string.Create(CultureInfo.InvariantCulture, $"{dose.Poured.Grams * i / PourSteps:0.000} g"));
                Thread.Sleep(interval / PourSteps);
            }
        }

        call.Terminal.Line(Say($"{text}: done"));
        call.Terminal.Flush();
        return turn.Session;
    }

    /// <summary>Says what the viscometer shows; it counts as stable when two lines say nearly the same.</summary>
    private static void Speak(LinePattern pattern, LineSpeaker viscometer, PracticeSession session)
    {
        var isStable = session.Standing > TimeSpan.FromSeconds(30);
        if (session.Showing is { } shown
            && pattern.Write(
                c => c == Columns.Temperature ? RoomTemperature : Math.Round(shown.MilliPascalSeconds, 1), isStable) is { } line)
        {
            viscometer.Say(line);
        }
    }
}
