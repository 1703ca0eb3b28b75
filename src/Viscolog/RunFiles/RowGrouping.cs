using System.Collections.Immutable;
using Viscolog.Core.Pots;

namespace Viscolog.RunFiles;

/// <summary>Gathers entries into rows.</summary>
internal static class RowGrouping
{
    /// <summary>An entry joins the row before it where the order inside a row, its time and its void reason allow it.</summary>
    public static ImmutableArray<RunFileRow> Of(ImmutableArray<Entry> entries)
    {
        var rows = ImmutableArray.CreateBuilder<RunFileRow>();
        var first = 0;
        for (var i = 1; i <= entries.Length; i++)
        {
            if (i == entries.Length || !Joins(entries[i - 1], entries[i]))
            {
                rows.Add(new(first, i - first, []));
                first = i;
            }
        }

        return rows.ToImmutable();
    }

    private static bool Joins(Entry before, Entry entry)
        => Place(entry) > Place(before) && SameTime(entry.Time, before.Time) && entry.VoidReason == before.VoidReason;

    // Two clocks may show the same instant; a row holds one text for both, so the offset must agree too.
    private static bool SameTime(DateTimeOffset? left, DateTimeOffset? right)
        => left is { } l && right is { } r ? l.EqualsExact(r) : left is null && right is null;

    private static int Place(Entry entry) => entry switch
    {
        Entry.TakenOut => 0,
        Entry.LetDown => 1,
        Entry.Watered => 2,
        Entry.Dosed => 3,
        Entry.Measured => 4,
        _ => 5,
    };
}
