using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>A run that goes on: what its next entry has to fit to. Appending takes the same time however long the run is.</summary>
public sealed record OpenRun
{
    /// <summary>What a pot must hold after a sample: less can't be weighed, and the bound keeps the balance finite.</summary>
    public static readonly Mass LeastLeft = Mass.FromGrams(0.001);

    private readonly Run _run;

    private OpenRun(Run run) => (_run, Pot) = (run, Pot.With(run.BaseMass));

    /// <summary>What the pot holds now.</summary>
    public Pot Pot { get; private init; }

    /// <summary>How long it had stood at the last reading of this step; null where none says.</summary>
    public TimeSpan? Stood { get; private init; }

    /// <summary>The run before its first entry, whatever entries it holds.</summary>
    public static OpenRun Begin(Run run) => new(run);

    /// <summary>The run after all its entries, which are not checked again.</summary>
    /// <exception cref="ArgumentException">An entry does not fit the run (see <see cref="Run.After"/>).</exception>
    public static OpenRun After(Run run) => run.Entries.Aggregate(Begin(run), (open, entry) => open.With(entry));

    /// <summary>
    /// Appends an entry: the run with it, or why it can't be. An entry that is void changes nothing, but has to say something that can
    /// be.
    /// </summary>
    public Appended Append(Entry entry) => Fault(entry) is { } fault ? new Appended.Refused(fault) : new Appended.To(With(entry));

    /// <summary>Appends the entries of one row: the run with all of them, or the first reason against it.</summary>
    public Appended Append(IEnumerable<Entry> row)
        => row.Aggregate((Appended)new Appended.To(this), (all, entry) => all is Appended.To(var open) ? open.Append(entry) : all);

    private OpenRun With(Entry entry) => this with
    {
        Pot = _run.After(Pot, entry),
        Stood = !entry.Counts ? Stood : Steps.Begins(entry) ? null : (entry as Entry.Measured)?.Reading.Wait ?? Stood,
    };

    private EntryFault? Fault(Entry entry) => entry switch
    {
        Entry.Dosed { Poured.Grams: 0 } or Entry.TakenOut { Sample.Grams: 0 } or Entry.LetDown { Base.Grams: 0 }
            or Entry.Watered { Water.Grams: 0 } => new EntryFault.Nothing(),
        Entry.Measured { Reading.IsEmpty: true } => new EntryFault.Nothing(),
        Entry.Noted noted when string.IsNullOrWhiteSpace(noted.Text) => new EntryFault.Nothing(),
        Entry.Dosed dosed when _run.FindThickener(dosed.Thickener) is null => new EntryFault.NoSuchThickener(dosed.Thickener),
        Entry.Measured { Reading.Value: { } value } when !_run.MethodInForce.Reads(value)
            => new EntryFault.NotRead(_run.MethodInForce, value),
        { Counts: false } => null,
        Entry.Measured { Reading.Wait: { } wait } when wait < Stood => new EntryFault.StandsBackwards(Stood.Value),
        Entry.TakenOut taken when taken.Sample.Grams > Pot.Total.Grams - LeastLeft.Grams => new EntryFault.SampleTooLarge(Pot.Total),
        _ => null,
    };
}

/// <summary>What came of appending to a run. The set of cases is closed.</summary>
public abstract record Appended
{
    private Appended()
    {
    }

    /// <summary>It fits.</summary>
    /// <param name="Run">The run with it.</param>
    public sealed record To(OpenRun Run) : Appended;

    /// <summary>It does not.</summary>
    /// <param name="Fault">Why.</param>
    public sealed record Refused(EntryFault Fault) : Appended;
}

/// <summary>Why an entry can't come next in a run. The set of cases is closed.</summary>
public abstract record EntryFault
{
    private EntryFault()
    {
    }

    /// <summary>It says nothing: an amount of 0, an empty note, a reading of nothing.</summary>
    public sealed record Nothing : EntryFault;

    /// <summary>The run has no thickener of that name.</summary>
    /// <param name="Name">The name.</param>
    public sealed record NoSuchThickener(string Name) : EntryFault;

    /// <summary>The run's method does not read such a value.</summary>
    /// <param name="Method">The method in force.</param>
    /// <param name="Value">The value.</param>
    public sealed record NotRead(Method Method, InstrumentValue Value) : EntryFault;

    /// <summary>The pot stood longer at an earlier reading of this step.</summary>
    /// <param name="Earlier">How long it stood then.</param>
    public sealed record StandsBackwards(TimeSpan Earlier) : EntryFault;

    /// <summary>The sample leaves less than <see cref="OpenRun.LeastLeft"/>.</summary>
    /// <param name="Held">What the pot holds.</param>
    public sealed record SampleTooLarge(Mass Held) : EntryFault;
}
