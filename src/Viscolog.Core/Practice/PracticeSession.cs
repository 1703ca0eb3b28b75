using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>
/// A practice pot being played. Never changes: each move gives the game after it. What hides in the pot is shown only when the game has
/// ended (<see cref="PracticePath"/>).
/// </summary>
public sealed record PracticeSession
{
    /// <summary>Part of the body still to come from which on a dose counts as poured too early, in ln units.</summary>
    private const double EarlyPart = 0.05;

    /// <summary>Stirring that leaves no lumps.</summary>
    private static readonly TimeSpan LeastStir = TimeSpan.FromSeconds(5);

    /// <summary>What the instrument shows is steady for so long.</summary>
    private static readonly TimeSpan Steady = TimeSpan.FromSeconds(5);

    private static readonly TimeSpan ShortestStir = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestStir = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan LongestWait = TimeSpan.FromHours(2);

    private PracticeSession(PracticeGame game) => (Game, Pot, Run) = (game, game.Pot, game.Start);

    /// <summary>What is played.</summary>
    public PracticeGame Game { get; }

    /// <summary>The run as the player has written it down.</summary>
    public Run Run { get; private init; }

    /// <summary>The moves so far; standing times that follow each other are one.</summary>
    public ImmutableArray<PracticeMove> Moves { get; private init; } = [];

    /// <summary>A line for each reading.</summary>
    public ImmutableArray<PracticeLine> Lines { get; private init; } = [];

    /// <summary>The game's time so far: stirring and standing.</summary>
    public TimeSpan Elapsed { get; private init; }

    /// <summary>Whether the game has ended.</summary>
    public bool HasEnded { get; private init; }

    /// <summary>Whether something went in that is not stirred in yet.</summary>
    public bool NeedsStirring => PouredSince.Grams > 0 || BaseSince.Grams > 0;

    /// <summary>Standing since the last stirring; null before the first, or while something waits to be stirred in.</summary>
    public TimeSpan? Standing => NeedsStirring ? null : Pot.Standing;

    /// <summary>What the instrument shows now; null while something waits to be stirred in.</summary>
    public Viscosity? Showing => NeedsStirring
        ? null
        : Viscosity.FromLn(Pot.LnNow + (Game.Difficulty.ReadingError * SeededNormals.At(Game.Seed, Game.Difficulty.Level, Stirrings,
            (Pot.Standing ?? TimeSpan.Zero).Ticks / Steady.Ticks, Lines.Length)));

    /// <summary>The dose as the scale has it, what waits to be stirred in counted.</summary>
    public Dose DoseNow => Run.PotNow().DoseOf(Run.Thickeners[0].Name);

    /// <summary>What can be seen of the pot now.</summary>
    public ImmutableArray<PracticeSign> Signs
        => [
            .. HasLumps ? [PracticeSign.Lumps] : Array.Empty<PracticeSign>(),
            .. Pot.Dose > Game.Truth.WeepsFrom ? [PracticeSign.Weeping] : Array.Empty<PracticeSign>(),
        ];

    /// <summary>The pot as it truly is.</summary>
    internal HiddenPot Pot { get; private init; }

    /// <summary>Doses poured while the one before still built up.</summary>
    internal int EarlyDoses { get; private init; }

    /// <summary>The dose, counted from 1, that first brought the pot over; null while none has.</summary>
    internal int? WentOverAt { get; private init; }

    private Mass PouredSince { get; init; }

    private Mass TrulyPouredSince { get; init; }

    private Mass BaseSince { get; init; }

    private PracticeLine Next { get; init; } = new(0);

    private int Doses { get; init; }

    private int Stirrings { get; init; }

    private bool HasLumps { get; init; }

    /// <summary>Begins a game.</summary>
    public static PracticeSession Of(PracticeGame game) => new(game);

    /// <summary>The game after a move.</summary>
    public PracticeTurn Take(PracticeMove move) => HasEnded ? new(this, new PracticeRefusal.GameEnded()) : move switch
    {
        PracticeMove.Dose dose => Pour(dose.Poured),
        PracticeMove.LetDown letDown => LetDown(letDown.Base),
        PracticeMove.Stir stir => Stir(stir.Time),
        PracticeMove.Wait wait => Wait(wait.Time),
        PracticeMove.Read => Read(),
        PracticeMove.End => End(),
        _ => throw new ArgumentOutOfRangeException(nameof(move), move, "not a case of the closed set"),
    };

    /// <summary>The game after several moves; ends at the first that is refused.</summary>
    public PracticeTurn Take(IEnumerable<PracticeMove> moves)
    {
        var turn = new PracticeTurn(this, null);
        foreach (var move in moves)
        {
            turn = turn.Session.Take(move);
            if (turn.Refusal is not null)
            {
                break;
            }
        }

        return turn;
    }

    private PracticeTurn Pour(Mass poured)
    {
        if (poured.Grams <= 0 || poured > Game.Start.BaseMass)
        {
            return new(this, new PracticeRefusal.DoseOutside(Game.Start.BaseMass));
        }

        var error = Game.Difficulty.DosingError * SeededNormals.At(Game.Seed, Game.Difficulty.Level, -1, Doses);
        return new(this with
        {
            PouredSince = PouredSince + poured,
            TrulyPouredSince = TrulyPouredSince + Mass.FromGrams(Math.Max(0, poured.Grams * (1 + error))),
            Doses = Doses + 1,
            EarlyDoses = EarlyDoses + (!NeedsStirring && Math.Abs(Pot.SettledLn - Pot.LnNow) > EarlyPart ? 1 : 0),
            Run = Run with { Entries = Run.Entries.Add(new Entry.Dosed(Run.Thickeners[0].Name, poured)) },
            Moves = Moves.Add(new PracticeMove.Dose(poured)),
            Next = Next with { Poured = Next.Poured + poured },
        }, null);
    }

    private PracticeTurn LetDown(Mass added)
    {
        var most = Mass.FromGrams(10 * Game.Start.BaseMass.Grams);
        if (added.Grams <= 0 || added > most)
        {
            return new(this, new PracticeRefusal.BaseOutside(most));
        }

        return new(this with
        {
            BaseSince = BaseSince + added,
            Run = Run with { Entries = Run.Entries.Add(new Entry.LetDown(added)) },
            Moves = Moves.Add(new PracticeMove.LetDown(added)),
            Next = Next with { Base = Next.Base + added },
        }, null);
    }

    private PracticeTurn Stir(TimeSpan time)
    {
        if (!NeedsStirring)
        {
            return new(this, new PracticeRefusal.NothingToStir());
        }

        if (time < ShortestStir || time > LongestStir)
        {
            return new(this, new PracticeRefusal.StirringOutside(ShortestStir, LongestStir));
        }

        var pot = Pot.StirredIn(TrulyPouredSince, BaseSince);
        var increment = 100 * TrulyPouredSince.Grams / pot.Base.Grams;
        var lumps = TrulyPouredSince.Grams > 0 && (time < LeastStir || increment > IncrementPolicy.StepCap * pot.RangeTop.Percent * 1.05);
        return new(this with
        {
            Pot = pot,
            HasLumps = HasLumps || lumps,
            WentOverAt = WentOverAt ?? (Game.Truth.IsOver(pot.Dose) ? Doses : null),
            PouredSince = Mass.None,
            TrulyPouredSince = Mass.None,
            BaseSince = Mass.None,
            Stirrings = Stirrings + 1,
            Elapsed = Elapsed + time,
            Moves = Moves.Add(new PracticeMove.Stir(time)),
            Next = Next with { Stirred = Next.Stirred + time },
        }, null);
    }

    private PracticeTurn Wait(TimeSpan time)
    {
        if (NeedsStirring)
        {
            return new(this, new PracticeRefusal.StirFirst(new PracticeMove.Wait(time)));
        }

        if (time <= TimeSpan.Zero || time > LongestWait)
        {
            return new(this, new PracticeRefusal.StandingOutside(LongestWait));
        }

        var moves = Moves is [.., PracticeMove.Wait before]
            ? Moves.SetItem(Moves.Length - 1, new PracticeMove.Wait(before.Time + time))
            : Moves.Add(new PracticeMove.Wait(time));
        return new(this with { Pot = Pot.Stood(time), Elapsed = Elapsed + time, Moves = moves }, null);
    }

    private PracticeTurn Read()
    {
        if (Showing is not { } shown)
        {
            return new(this, new PracticeRefusal.StirFirst(new PracticeMove.Read()));
        }

        var reading = new Reading
        {
            Value = new InstrumentValue.Direct(shown),
            Temperature = Run.ReferenceTemperatureInForce,
            Stir = Next.Stirred > TimeSpan.Zero ? Next.Stirred : null,
            Wait = Pot.Standing,
        };
        return new(this with
        {
            Run = Run with { Entries = Run.Entries.Add(new Entry.Measured(reading)) },
            Moves = Moves.Add(new PracticeMove.Read()),
            Lines = Lines.Add(Line(shown)),
            Next = new(Lines.Length + 1),
        }, null);
    }

    private PracticeTurn End()
    {
        if (NeedsStirring)
        {
            return new(this, new PracticeRefusal.StirFirst(new PracticeMove.End()));
        }

        var hasChanged = Next.Poured.Grams > 0 || Next.Base.Grams > 0;
        var lines = hasChanged || Lines.IsEmpty ? Lines.Add(Line(null)) : Lines;
        return new(this with { HasEnded = true, Moves = Moves.Add(new PracticeMove.End()), Lines = lines }, null);
    }

    private PracticeLine Line(Viscosity? shown)
        => Next with { Number = Lines.Length, Stood = Pot.Standing, Shown = shown, Dose = DoseNow, At = Elapsed, Signs = Signs, Pot = Pot };
}

/// <summary>What came of a move.</summary>
/// <param name="Session">The game after it; as before where it was refused.</param>
/// <param name="Refusal">Why it can't be done; null where it was done.</param>
public sealed record PracticeTurn(PracticeSession Session, PracticeRefusal? Refusal);

/// <summary>How a game ended.</summary>
public enum PracticeVerdict
{
    /// <summary>Below the band.</summary>
    StillShort,

    /// <summary>In band.</summary>
    InBand,

    /// <summary>Above the band, or beyond the peak of its curve.</summary>
    Over,
}
