using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests;

/// <summary>
/// Every case of a closed set that comes in from outside does what it is for; a new case is missing here until somebody says what that is.
/// </summary>
public sealed class ClosedSetTests
{
    private static readonly Thickener Thickener = new("T") { Dilution = new(1, 1) };

    /// <summary>
    /// Each entry, and base, neat thickener and water of a pot of 100 g of base and 4 g of thickener, half of it water, after it.
    /// </summary>
    public static TheoryData<Entry, double[]> Entries => new()
    {
        { new Entry.Dosed("T", Mass.FromGrams(2)), [100, 3, 3] },
        { new Entry.LetDown(Mass.FromGrams(20)), [120, 2, 2] },
        { new Entry.Watered(Mass.FromGrams(7)), [100, 2, 9] },
        { new Entry.TakenOut(Mass.FromGrams(26)), [75, 1.5, 1.5] },
        { new Entry.Measured(new Reading { Value = new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(900)) }), [100, 2, 2] },
        { new Entry.Noted("left overnight"), [100, 2, 2] },
    };

    [Theory]
    [MemberData(nameof(Entries))]
    public void An_entry_leaves_the_pot_as_it_says_and_a_void_one_as_it_was(Entry entry, double[] grams)
    {
        Assert.Equal(grams, Grams(entry));
        Assert.Equal([100, 2, 2], Grams(entry with { VoidReason = "another pot" }));
    }

    /// <summary>Each value by a method that reads it, in water.</summary>
    public static TheoryData<InstrumentValue, string> Values => new()
    {
        { new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(900)), "direct" },
        { new InstrumentValue.CupTime(TimeSpan.FromSeconds(60)), "iso-2431-4" },
        { new InstrumentValue.Krebs(85), "krebs" },
        { new InstrumentValue.Torque(Percentage.FromPercent(50), 20), "rotational" },
        { new InstrumentValue.Plain(50), "slump" },
    };

    [Theory]
    [MemberData(nameof(Values))]
    public void A_value_is_read_by_its_method_and_a_mistake_for_another(InstrumentValue value, string id)
    {
        var setup = new MethodSetup
        {
            PerPercentTorque = Viscosity.FromMilliPascalSeconds(200),
            CylinderHeight = Length.FromMillimeters(100),
        };
        Conversion By(string method) => Conversions.Of(Method.Find(method)!, value, setup, Density.FromGramsPerMilliliter(1));
        Assert.IsType<Conversion.Converted>(By(id));
        Assert.Throws<ArgumentException>(() => By(id == "krebs" ? "slump" : "krebs"));
    }

    /// <summary>Each move after a dose of 2 g that was stirred in.</summary>
    public static TheoryData<PracticeMove, Func<PracticeSession, bool>> Moves => new()
    {
        { new PracticeMove.Dose(Mass.FromGrams(1)), s => s.NeedsStirring && s.Run.PotNow().In(s.Run.Thickeners[0].Name).Grams == 3 },
        {
            new PracticeMove.LetDown(Mass.FromGrams(20)),
            s => s.NeedsStirring && s.Run.PotNow().Base == s.Game.Start.BaseMass + Mass.FromGrams(20)
        },
        { new PracticeMove.Wait(TimeSpan.FromSeconds(3600)), s => Math.Abs(s.Pot.Now.Ln - s.Pot.Settled.Ln) < 1e-6 },
        { new PracticeMove.Read(), s => s.Run.Entries[^1] is Entry.Measured && s.Lines[^1].Shown is not null },
        { new PracticeMove.End(), s => s.HasEnded },
    };

    [Theory]
    [MemberData(nameof(Moves))]
    public void A_move_does_what_it_says(PracticeMove move, Func<PracticeSession, bool> isDone)
    {
        var poured = PracticeSession.Of(PracticeGame.Of(PracticeDifficulty.Find("slow")!, 3))
            .Take(new PracticeMove.Dose(Mass.FromGrams(2))).Session;
        var stirred = poured.Take(new PracticeMove.Stir(TimeSpan.FromSeconds(10))).Session;
        Assert.Equal((true, false), (poured.NeedsStirring, stirred.NeedsStirring));
        Assert.False(isDone(stirred));
        var after = stirred.Take(move);
        Assert.Null(after.Refusal);
        Assert.True(isDone(after.Session));
    }

    [Fact]
    public void No_case_is_missing_above()
    {
        Assert.Equal(CasesOf(typeof(Entry)), Named(Entries.Select(r => (object)r.Data.Item1)));
        Assert.Equal(CasesOf(typeof(InstrumentValue)), Named(Values.Select(r => (object)r.Data.Item1)));
        // Stirring stands before every move above.
        Assert.Equal(
            CasesOf(typeof(PracticeMove)),
            Named(Moves.Select(r => (object)r.Data.Item1).Append(new PracticeMove.Stir(TimeSpan.FromSeconds(10)))));
    }

    private static ImmutableArray<string> CasesOf(Type set)
        => [.. set.Assembly.GetTypes().Where(t => t.IsSubclassOf(set)).Select(t => t.Name).Order(StringComparer.Ordinal)];

    private static ImmutableArray<string> Named(IEnumerable<object> cases)
        => [.. cases.Select(c => c.GetType().Name).Order(StringComparer.Ordinal)];

    private static double[] Grams(Entry entry)
    {
        var run = new Run(new("B"), Mass.FromGrams(100))
        {
            Thickeners = [Thickener],
            Entries = [new Entry.Dosed("T", Mass.FromGrams(4)), entry],
        };
        var pot = run.PotNow();
        return [.. new[] { pot.Base.Grams, pot.In("T").Grams, pot.Water.Grams }.Select(g => Math.Round(g, 9))];
    }
}
