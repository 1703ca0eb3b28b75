using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.RunFiles;

/// <summary>What one row says. Its entries happened in the order of the properties.</summary>
internal sealed record RowContent
{
    /// <summary>Sample taken out.</summary>
    public Mass? Taken { get; init; }

    /// <summary>Base added.</summary>
    public Mass? LetDown { get; init; }

    /// <summary>Water added.</summary>
    public Mass? Water { get; init; }

    /// <summary>Thickener poured in.</summary>
    public Entry.Dosed? Dosed { get; init; }

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

    /// <summary>The same row with another void reason, or with none.</summary>
    public RowContent Voided(string? reason) => this with { Void = reason, Dosed = Dosed is null ? null : Dosed with { VoidReason = reason } };

    /// <summary>The row that holds these entries, one of a kind at most.</summary>
    public static RowContent Of(ReadOnlySpan<Entry> entries)
    {
        var content = new RowContent();
        foreach (var entry in entries)
        {
            content = entry switch
            {
                Entry.TakenOut taken => content with { Taken = taken.Sample },
                Entry.LetDown letDown => content with { LetDown = letDown.Base },
                Entry.Watered watered => content with { Water = watered.Water },
                Entry.Dosed dosed => content with { Dosed = dosed },
                Entry.Measured measured => content with { Reading = measured.Reading },
                Entry.Noted noted => content with { Note = noted.Text },
                _ => throw new ArgumentException("an entry of a kind that has no column", nameof(entries)),
            } with
            { Time = entry.Time, Void = entry.VoidReason };
        }

        return content;
    }

    /// <summary>The entries in their order, each with the row's time and void reason.</summary>
    public IEnumerable<Entry> Entries()
    {
        Entry?[] made =
        [
            Taken is { } taken ? new Entry.TakenOut(taken) : null,
            LetDown is { } @base ? new Entry.LetDown(@base) : null,
            Water is { } water ? new Entry.Watered(water) : null,
            Dosed,
            Reading is null ? null : new Entry.Measured(Reading),
            Note is null ? null : new Entry.Noted(Note),
        ];
        return made.OfType<Entry>().Select(e => e with { Time = Time, VoidReason = Void });
    }
}
