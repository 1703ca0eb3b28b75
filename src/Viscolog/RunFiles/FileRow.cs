using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.RunFiles;

/// <summary>
/// What one row says: of a run file, of the journal, of the query copy. Its entries happened in the order of the first six properties.
/// </summary>
[JsonConverter(typeof(FileRowJson))]
internal sealed record FileRow
{
    /// <summary>Sample taken out.</summary>
    public Mass? Taken { get; init; }

    /// <summary>Base added.</summary>
    public Mass? LetDown { get; init; }

    /// <summary>Water added.</summary>
    public Mass? Water { get; init; }

    /// <summary>Thickener poured in; the row says when, and whether it counts.</summary>
    public Entry.Dosed? Dosed
    {
        get;
        init => field = value is null ? null : new(value.Thickener, value.Poured);
    }

    /// <summary>The reading.</summary>
    public Reading? Reading { get; init; }

    /// <summary>The note.</summary>
    public string? Note { get; init; }

    /// <summary>When it happened.</summary>
    public DateTimeOffset? Time { get; init; }

    /// <summary>Why the row counts no more.</summary>
    public string? Void { get; init; }

    /// <summary>Whether the row stands for the void row before it.</summary>
    public bool Replaces { get; init; }

    /// <summary>The texts of the unknown columns, in their order; fewer where the last ones are empty.</summary>
    public ImmutableArray<string> Unknown { get; init; } = [];

    /// <summary>The row that holds these entries, one of a kind at most.</summary>
    public static FileRow Of(ReadOnlySpan<Entry> entries)
    {
        var row = new FileRow();
        foreach (var entry in entries)
        {
            row = entry switch
            {
                Entry.TakenOut taken => row with { Taken = taken.Sample },
                Entry.LetDown letDown => row with { LetDown = letDown.Base },
                Entry.Watered watered => row with { Water = watered.Water },
                Entry.Dosed dosed => row with { Dosed = dosed },
                Entry.Measured measured => row with { Reading = measured.Reading },
                Entry.Noted noted => row with { Note = noted.Text },
                _ => throw new ArgumentException("an entry of a kind that has no column", nameof(entries)),
            } with
            { Time = entry.Time, Void = entry.VoidReason };
        }

        return row;
    }

    /// <summary>The entries in their order, each with the row's time and void reason.</summary>
    public IEnumerable<Entry> Entries()
    {
        if (Taken is { } taken)
        {
            yield return new Entry.TakenOut(taken) { Time = Time, VoidReason = Void };
        }

        if (LetDown is { } @base)
        {
            yield return new Entry.LetDown(@base) { Time = Time, VoidReason = Void };
        }

        if (Water is { } water)
        {
            yield return new Entry.Watered(water) { Time = Time, VoidReason = Void };
        }

        if (Dosed is { } dosed)
        {
            yield return dosed with { Time = Time, VoidReason = Void };
        }

        if (Reading is { } reading)
        {
            yield return new Entry.Measured(reading) { Time = Time, VoidReason = Void };
        }

        if (Note is { } note)
        {
            yield return new Entry.Noted(note) { Time = Time, VoidReason = Void };
        }
    }

    /// <summary>Every text in it.</summary>
    public IEnumerable<string> Texts() => new[] { Note, Void, Dosed?.Thickener }.OfType<string>().Concat(Unknown);

    /// <summary>
    /// Whether an entry belongs into the row of the entry before it: the order inside a row, its time and its void reason allow it.
    /// </summary>
    public static bool Joins(Entry before, Entry entry)
        => PlaceOf(entry) > PlaceOf(before) && SameTime(entry.Time, before.Time) && entry.VoidReason == before.VoidReason;

    // Two clocks may show the same instant; a row holds one text for both, so the offset must agree too.
    private static bool SameTime(DateTimeOffset? left, DateTimeOffset? right)
        => left is { } l && right is { } r ? l.EqualsExact(r) : left is null && right is null;

    private static int PlaceOf(Entry entry) => entry switch
    {
        Entry.TakenOut => 0,
        Entry.LetDown => 1,
        Entry.Watered => 2,
        Entry.Dosed => 3,
        Entry.Measured => 4,
        _ => 5,
    };
}
