using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Practice;
using Viscolog.PracticeFiles;
using Viscolog.Reports;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Practice;

/// <summary>A game whose moves stand on the command line.</summary>
internal sealed class PracticePlayCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- practice play --pot easy --seed 7 read dose=2 stir=10 wait=60 "
        + "read dose=2 stir=10 wait=60 read end";

    private readonly PracticeOptions _game = new();
    private readonly Option<string?> _player = TextOption.Create(
        "--player", "NAME", "Who plays; the score is kept under this name. Without it nothing is kept.");
    private readonly OutputOptions _output = new($"Write a file as well: {PracticeFile.Endings}.", "file");
    private readonly Argument<string[]> _moves = new("MOVE")
    {
        Description = "In order: dose=GRAMS, stir=SECONDS, wait=SECONDS, read, base=GRAMS (let down), end.",
        Arity = ArgumentArity.OneOrMore,
    };

    public PracticePlayCommand()
        : base("play", "Play a practice pot by moves on the command line; after 'end' it shows what was in the pot.", Example)
        => Take([_moves, .. _game.All, _player, .. _output.All]);

    protected override ExitCode Run(Invocation call)
    {
        var session = PracticeSession.Of(_game.Game(call));
        foreach (var (i, text) in call.Value(_moves).Index())
        {
            if (PracticeMoveText.Read(text, out var error) is not { } move)
            {
                return call.Refuse(FormattableString.Invariant($"move {i + 1}: {error}"));
            }

            var turn = session.Take(move);
            if (turn.Refusal is { } refusal)
            {
                return call.Refuse(Say($"move {i + 1}, {text}: {PracticeWords.Of(refusal)}"));
            }

            session = turn.Session;
        }

        return session.HasEnded ? Reveal(call, session) : Standing(call, session);
    }

    private static ExitCode Standing(Invocation call, PracticeSession session)
    {
        if (call.Json)
        {
            return call.Refuse("--json answers on games that have ended; put 'end' last");
        }

        PracticeText.Head(call.Terminal, session.Game);
        foreach (var line in session.Lines)
        {
            call.Terminal.Line($"  {PracticeWords.Row(line)}");
        }

        call.Terminal.Line("  " + (session.Showing is { } shown
            ? Say($"now the instrument shows {Shown.Body(shown)}")
            : Say("what was added is not stirred in yet")));
        call.Note(Say("the game goes on: nothing is shown or kept before 'end'"));
        return ExitCode.Done;
    }

    private ExitCode Reveal(Invocation call, PracticeSession session)
    {
        var path = PracticePath.Of(PracticePlayer.Person, session);
        var name = call.Value(_player) is { } given && PracticeWords.PlayerName(given) is { Length: > 0 } said
            ? said
            : PracticeWords.Name(PracticePlayer.Person);
        NamedPath[] players = [new(name, path), new(PracticeWords.Name(PracticePlayer.Advised), PracticePlayers.Advised(session.Game))];
        if (call.Json)
        {
            call.Print(PracticeAnswer.Of(players, path));
        }
        else
        {
            Print(call.Terminal, players);
        }

        if (call.Value(_player) is not null)
        {
            if (PracticeScores.Beside(call.Log).Save(PracticeResult.Of(name, path, call.Clock.GetLocalNow())) is { } fault)
            {
                return call.LogFailed(fault);
            }

            if (!call.Json)
            {
                call.Terminal.Line();
                call.Terminal.Line(Say("score kept; 'viscolog practice scores' shows the sheet"));
            }
        }

        return PracticeText.Write(call, players, _output);
    }

    private static void Print(CallOutput terminal, NamedPath[] players)
    {
        var path = players[0].Path;
        PracticeText.Head(terminal, path.Session.Game);
        terminal.Line();
        for (var i = 0; i < path.Steps.Length; i++)
        {
            PracticeText.Named(terminal, PracticeWords.Sentence(path, i), Say($"step {i}"));
        }

        PracticeText.Named(terminal, PracticeWords.Ending(path), Say("end", "game"));
        PracticeText.Reveal(terminal, players, OverdoseLesson.Of(path), Say("This game"));
    }
}
