using Viscolog.OilFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>What a file of oil readings brings: equal readings are counted, so importing a file again adds nothing.</summary>
/// <param name="Records">What is to be logged.</param>
/// <param name="Added">Readings that are new.</param>
/// <param name="Voided">Readings of the log that are made void.</param>
/// <param name="Already">Readings that the log has.</param>
internal sealed record OilMerge(IReadOnlyList<LogRecord> Records, int Added, int Voided, int Already)
{
    public static OilMerge Of(IEnumerable<OilRow> rows, IReadOnlyList<LoggedOil> logged)
    {
        var free = logged.GroupBy(o => o.Row.Key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        var records = new List<LogRecord>();
        var (next, added, voided, already) = (logged.Count + 1, 0, 0, 0);
        foreach (var row in rows)
        {
            var same = free.GetValueOrDefault(row.Key) ?? [];
            // A void one in the file finds a void one of the log before it makes another void.
            var known = same.Find(o => o.Row.Void is not null == row.Void is not null) ?? same.FirstOrDefault();
            var number = known?.Number ?? next++;
            if (known is null)
            {
                records.Add(new LogRecord.OilRead(number, row.Cells));
                added++;
            }
            else
            {
                same.Remove(known);
                already++;
            }

            // What was made void here stays void, whatever the file says.
            if (row.Void is { } reason && known?.Row.Void is null)
            {
                records.Add(new LogRecord.OilVoided(number, reason));
                voided += known is null ? 0 : 1;
            }
        }

        return new(records, added, voided, already);
    }
}
