using System.Collections.Immutable;
using CsCheck;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

/// <summary>What makes a run valid, as laws of appending to it.</summary>
public sealed class AppendLaws
{
    private static readonly Run Bare = new(new("B"), Mass.FromGrams(100)) { Thickeners = [new("N"), new("C") { Dilution = new(1, 3) }] };

    private static readonly Gen<Entry> AnyEntry = Gen.Select(
        Gen.Int[0, 6],
        Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 60]),
        Gen.Int[0, 5],
        Gen.Bool).Select((kind, g, n, isVoid) => (kind switch
        {
            0 => new Entry.Dosed(n == 0 ? "X" : n < 3 ? "C" : "N", Mass.FromGrams(g)),
            1 => new Entry.TakenOut(Mass.FromGrams(2 * g)),
            2 => new Entry.LetDown(Mass.FromGrams(g)),
            3 => new Entry.Watered(Mass.FromGrams(g)),
            4 => new Entry.Noted(n == 0 ? " " : "levels"),
            _ => (Entry)Read(n == 0 ? null : n == 1 ? new InstrumentValue.Krebs(80) : Shown, g),
        }) with
        { VoidReason = isVoid && n > 3 ? "spilt" : null });

    private static InstrumentValue.Direct Shown { get; } = new(Viscosity.FromMilliPascalSeconds(900));

    [Fact]
    public void Appending_one_by_one_makes_the_pot_that_the_whole_run_makes()
        => AnyEntry.Array[0, 30].Sample(entries =>
        {
            var (run, open) = Kept(entries);
            Assert.Equal(run.PotNow().ToString(), open.Pot.ToString());
            Assert.Equal(OpenRun.After(run).Pot.ToString(), open.Pot.ToString());
            Assert.Equal(OpenRun.After(run).Stood, open.Stood);
            Assert.All(entries, e => Assert.Equal(run.Append(e).GetType(), open.Append(e).GetType()));
        });

    [Fact]
    public void What_was_appended_leaves_something_in_the_pot_and_never_stands_backwards()
        => AnyEntry.Array[0, 30].Sample(entries =>
        {
            var run = Kept(entries).Run;
            Assert.All(
                run.Entries.Index(), e => Assert.True((run with { Entries = run.Entries[..e.Index] }).PotNow().Total >= OpenRun.LeastLeft));
            foreach (var step in Steps.Of(run))
            {
                TimeSpan[] waits = [.. step.Readings.Select(r => r.Reading.Wait!.Value)];
                Assert.Equal(waits.Order(), waits);
            }
        });

    [Fact]
    public void An_entry_that_is_void_changes_nothing()
        => AnyEntry.Array[0, 20].Sample(entries =>
        {
            var (run, open) = Kept(entries);
            var without = Kept([.. run.Entries.Where(e => e.Counts)]);
            Assert.Equal((without.Open.Pot.ToString(), without.Open.Stood), (open.Pot.ToString(), open.Stood));
        });

    [Fact]
    public void A_row_is_appended_whole_or_not_at_all()
        => Gen.Select(AnyEntry.Array[0, 20], AnyEntry.Array[0, 4]).Sample((entries, row) =>
        {
            var open = Kept(entries).Open;
            var oneByOne = row.Aggregate<Entry, OpenRun?>(open, (o, e) => o?.Append(e) is Appended.To to ? to.Run : null);
            Assert.Equal(oneByOne?.Pot.ToString(), (open.Append(row) as Appended.To)?.Run.Pot.ToString());
        });

    [Fact]
    public void A_reason_says_what_stands_against_it()
    {
        Assert.Equal(new EntryFault.Nothing(), Fault([], new Entry.Dosed("N", Mass.None)));
        Assert.Equal(new EntryFault.Nothing(), Fault([], new Entry.TakenOut(Mass.None)));
        Assert.Equal(new EntryFault.Nothing(), Fault([], new Entry.LetDown(Mass.None)));
        Assert.Equal(new EntryFault.Nothing(), Fault([], new Entry.Watered(Mass.None)));
        Assert.Equal(new EntryFault.Nothing(), Fault([], new Entry.Noted(" ")));
        Assert.Equal(new EntryFault.Nothing(), Fault([], Read(null, 60)));
        Assert.Equal(new EntryFault.NoSuchThickener("X"), Fault([], new Entry.Dosed("X", Mass.FromGrams(1)) { VoidReason = "spilt" }));
        Assert.Equal(
            new EntryFault.NotRead(Method.Direct, new InstrumentValue.Krebs(80)), Fault([], Read(new InstrumentValue.Krebs(80), 60)));
        Assert.Equal(new EntryFault.StandsBackwards(TimeSpan.FromSeconds(90)), Fault([Read(Shown, 90)], Read(Shown, 89.9)));
        Assert.Null(Fault([Read(Shown, 90)], Read(Shown, 90)));
        Assert.Null(Fault([Read(Shown, 90), new Entry.Watered(Mass.FromGrams(1))], Read(Shown, 10)));
        Assert.Null(Fault([Read(Shown, 90) with { VoidReason = "slip" }], Read(Shown, 10)));
        Assert.Equal(
            new EntryFault.StandsBackwards(TimeSpan.FromSeconds(90)),
            Fault([Read(Shown, 90), new Entry.TakenOut(Mass.FromGrams(1))], Read(Shown, 10)));
        Assert.Equal(
            new EntryFault.SampleTooLarge(Mass.FromGrams(110)),
            Fault([new Entry.Dosed("N", Mass.FromGrams(10))], new Entry.TakenOut(Mass.FromGrams(109.9995))));
        Assert.Null(Fault([], new Entry.TakenOut(Mass.FromGrams(99.998))));
        Assert.Null(Fault([], new Entry.TakenOut(Mass.FromGrams(900)) { VoidReason = "slip" }));
    }

    private static EntryFault? Fault(ImmutableArray<Entry> before, Entry entry)
        => ((Bare with { Entries = before }).Append(entry) as Appended.Refused)?.Fault;

    private static (Run Run, OpenRun Open) Kept(IEnumerable<Entry> entries)
    {
        var (run, open) = (Bare, OpenRun.Begin(Bare));
        foreach (var entry in entries)
        {
            if (open.Append(entry) is Appended.To to)
            {
                (run, open) = (run with { Entries = run.Entries.Add(entry) }, to.Run);
            }
        }

        return (run, open);
    }

    private static Entry.Measured Read(InstrumentValue? value, double wait)
        => new(new Reading { Value = value, Wait = TimeSpan.FromSeconds(wait) });
}
