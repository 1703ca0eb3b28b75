using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Reports;
using Viscolog.Tables;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;
using GameStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Practice.GameState, Viscolog.Tui.Practice.GameEvent>;

namespace Viscolog.Tui.Practice;

/// <summary>
/// The machine of a practice game: a state and an event make the next state. Knows no clock of its own, and nothing of the truth before
/// the end.
/// </summary>
internal static class GameSteps
{
    public const int FastSpeed = 10;

    /// <summary>Game time is told to a hundredth of a second, so that a kept game can be played again alike.</summary>
    private const long Grain = TimeSpan.TicksPerSecond / 100;

    /// <summary>The most of real time that one tick counts for: a sleeping machine lets no pot stand.</summary>
    private static readonly TimeSpan LongestTick = TimeSpan.FromSeconds(2);

    private static readonly TimeSpan TraceStep = TimeSpan.FromSeconds(5);

    /// <summary>Begins a game.</summary>
    public static GameState Open(PracticeGame game, string player, DateTimeOffset now)
        => new(PracticeSession.Of(game), player, now) { Said = Say("read the base first: Enter on the empty field") };

    public static GameStep Next(GameState state, GameEvent @event, DateTimeOffset now) => @event switch
    {
        GameEvent.Typed typed when state.Path is null => Type(state, typed.Grams.Trim()),
        GameEvent.LetDown letDown when state.Path is null => Do(
            state,
            new PracticeMove.LetDown(letDown.Grams),
            Say($"{Shown.Grams(letDown.Grams)} of base added; F3 starts stirring")),
        GameEvent.Stir when state.Path is null => Stir(state),
        GameEvent.LetDownCalled when state.Path is null => new GameStep(state, new Ask<GameEvent>(PracticeForms.LetDown())),
        GameEvent.Hurry => state.Speed == 1
            ? state with { Speed = FastSpeed, Said = Say("time runs ten times as fast") }
            : state with { Speed = 1, Said = Say("time runs at normal speed") },
        GameEvent.End when state.Path is null => End(state),
        GameEvent.Again when state.Path is not null => Open(state.Session.Game, state.Player, now) with { Entered = state.Entered + 1 },
        GameEvent.Exported when state.Path is { } path => new GameStep(state, Export(state, path)),
        GameEvent.Compared compared => state with { Advised = compared.Advised },
        GameEvent.Kept kept => state with { Said = kept.Said },
        GameEvent.Turned when state.Path is not null => state with { View = Next(state.View), Above = default },
        GameEvent.Moved moved => state with { Above = state.Above.By(moved.Lines) },
        GameEvent.Leaving => state with { Error = null, Said = Say("leaving now loses this game; the same key again leaves") },
        GameEvent.Ticked => Tick(state, now),
        _ => state,
    };

    private static GameView Next(GameView view) => (GameView)(((int)view + 1) % Enum.GetValues<GameView>().Length);

    private static Export<GameEvent> Export(GameState state, PracticePath path) => new(
        PathForm.Practice("practice-pot"),
        (file, replace, today) => PracticeFile.Write(state.Players(path), file, replace, today),
        said => new GameEvent.Kept(said));

    private static GameStep Type(GameState state, string text)
    {
        if (text.Length == 0)
        {
            var said = state.Session.Showing is { } shown ? Say($"written down: {Shown.Body(shown)}") : "";
            return Do(state, new PracticeMove.Read(), said);
        }

        return TypedNumber.Read(text, NumberRange.GramsPresent, out var error) is { } grams
            ? Do(
                state, new PracticeMove.Dose(Mass.FromGrams(grams)), Say($"{Shown.Grams(Mass.FromGrams(grams))} added; F3 starts stirring"))
            : state with { Error = error };
    }

    private static GameStep Do(GameState state, PracticeMove move, string said)
    {
        if (state.Stirring is not null)
        {
            return state with { Error = Say("the pot is being stirred; F3 stops it") };
        }

        var turn = state.Session.Take(move);
        return turn.Refusal is { } refusal
            ? state with { Error = PracticeWords.Of(refusal) }
            : state with
            {
                Session = turn.Session,
                Error = null,
                Said = said,
                Entered = state.Entered + 1,
                Trace = turn.Session.NeedsStirring ? [] : state.Trace,
            };
    }

    private static GameStep Stir(GameState state)
    {
        if (state.Stirring is not { } stirred)
        {
            return state.Session.NeedsStirring
                ? state with { Stirring = TimeSpan.Zero, Error = null, Said = Say("stirring; F3 ends it") }
                : state with { Error = Say("nothing has been added since the last stirring") };
        }

        var least = TimeSpan.FromSeconds(1);
        var turn = state.Session.Take(new PracticeMove.Stir(stirred < least ? least : stirred));
        var stands = state with { Stirring = null };
        return turn.Refusal is { } refusal
            ? stands with { Error = PracticeWords.Of(refusal) }
            : Traced(stands with
            {
                Session = turn.Session,
                Trace = [],
                Error = null,
                Said = Say("standing; Enter on the empty field writes the reading down"),
            });
    }

    private static GameStep End(GameState state)
    {
        if (state.Stirring is not null)
        {
            return state with { Error = Say("the pot is being stirred; F3 stops it") };
        }

        var turn = state.Session.Take(new PracticeMove.End());
        if (turn.Refusal is { } refusal)
        {
            return state with { Error = PracticeWords.Of(refusal) };
        }

        var path = PracticePath.Of(PracticePlayer.Person, turn.Session);
        var said = state.Player.Length > 0 ? "" : Say("no player's name, so no score was kept");
        var ended = state with { Session = turn.Session, Path = path, Error = null, Said = said };
        return new GameStep(ended, state.Player.Length > 0
            ? [new GameEffect.Compare(turn.Session.Game), new GameEffect.Keep(state.Player, path)]
            : [new GameEffect.Compare(turn.Session.Game)]);
    }

    private static GameState Tick(GameState state, DateTimeOffset now)
    {
        var real = now - state.LastTick;
        if (state.Path is not null || real <= TimeSpan.Zero)
        {
            return state with { LastTick = now };
        }

        var counted = real > LongestTick ? LongestTick : real;
        var passed = TimeSpan.FromTicks(counted.Ticks / Grain * Grain);
        var ticked = state with { LastTick = now - (counted - passed) };
        if (passed <= TimeSpan.Zero)
        {
            return ticked;
        }

        passed *= state.Speed;
        if (ticked.Stirring is { } stirred)
        {
            return ticked with { Stirring = stirred + passed };
        }

        return ticked.Session.Standing is null
            ? ticked
            : Traced(ticked with { Session = ticked.Session.Take(new PracticeMove.Wait(passed)).Session });
    }

    /// <summary>Adds what the instrument shows where it shows something new.</summary>
    private static GameState Traced(GameState state)
    {
        if (state.Session is not { Showing: { } shown, Standing: { } standing })
        {
            return state;
        }

        var due = (int)(standing / TraceStep) + 1;
        return state.Trace.Length >= due
            ? state
            : state with { Trace = [.. state.Trace, .. Enumerable.Repeat(shown.Ln, due - state.Trace.Length)] };
    }
}
