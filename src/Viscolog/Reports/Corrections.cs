using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>What was corrected, made void or doubted in a run.</summary>
internal static class Corrections
{
    public static IEnumerable<string> Of(RunFile file, ImmutableArray<int> numbers, Study? study)
    {
        string[] rows = [.. Voids(file, numbers), .. Doubts(file, numbers, study)];
        return
        [
            .. rows.Length == 0 ? [Say("No row is void or doubted.")] : rows,
            .. Temperatures(file),
            .. (study?.Evidence.Warnings ?? []).Select(w => Sentence.Of(EvidenceWords.Of(w))),
        ];
    }

    private static IEnumerable<string> Voids(RunFile file, ImmutableArray<int> numbers)
    {
        var contents = file.Contents().ToArray();
        for (var i = 0; i < contents.Length; i++)
        {
            if (contents[i].Void is { } reason)
            {
                var row = RunRows.Number(numbers, i);
                yield return i + 1 < contents.Length && contents[i + 1].Replaces
                    ? Say($"Row {row} is void and does not count ({reason}); row {RunRows.Number(numbers, i + 1)} replaces it.")
                    : Say($"Row {row} is void and does not count ({reason}).");
            }
        }
    }

    private static IEnumerable<string> Doubts(RunFile file, ImmutableArray<int> numbers, Study? study)
    {
        foreach (var reading in (study?.Picture.Readings ?? []).Where(r => r.Doubted))
        {
            var row = file.Rows.Select((r, i) => (r, i)).First(r => reading.Entry < r.r.FirstEntry + r.r.EntryCount).i;
            yield return Say($"Row {RunRows.Number(numbers, row)} reads {Shown.Stated(reading.Value)} where the others suggest "
                + $"{Shown.Body(reading.Expected)}: it is kept and counts for less.");
        }
    }

    private static IEnumerable<string> Temperatures(RunFile file)
    {
        var reference = file.Run.ReferenceTemperatureInForce;
        double[] off =
        [
            .. file.Run.Entries.OfType<Entry.Measured>().Where(m => m.Counts && m.Reading.Value is not null)
                .Select(m => m.Reading.Temperature).OfType<Temperature>().Where(t => t != reference).Select(t => t.Celsius).Order(),
        ];
        if (off.Length > 0)
        {
            var range = off[0] == off[^1]
                ? Figures.OneDecimal(off[0])
                : Say($"{Figures.OneDecimal(off[0])} to {Figures.OneDecimal(off[^1])}");
            yield return Say($"{Count.Of(off.Length, Say("reading"), Say("readings"))} taken at {range} °C: brought to "
                + $"{RunFacts.Temperature(file.Run)}.");
        }
    }
}
