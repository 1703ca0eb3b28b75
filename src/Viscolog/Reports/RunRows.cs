using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>Every row of a run as a table: what counts, and struck through what does not.</summary>
internal static class RunRows
{
    /// <summary>Makes the table.</summary>
    /// <param name="file">The run.</param>
    /// <param name="numbers">The rows' numbers; empty to count them.</param>
    /// <param name="study">What the run says, for the bodies at the reference temperature.</param>
    /// <param name="from">The first row shown, from 0.</param>
    public static Block Of(RunFile file, ImmutableArray<int> numbers, Study? study, int from = 0)
    {
        if (file.Rows.Length <= from)
        {
            return new Block.Prose(Say("None: nothing was logged."));
        }

        var run = file.Run;
        var bodies = (study?.Picture.Readings ?? []).ToDictionary(r => r.Entry);
        var dosed = run.Thickeners.Where(t => run.Entries.OfType<Entry.Dosed>().Any(d => run.NameNow(d.Thickener) == t.Name)).ToArray();
        var oneDay = run.Entries.Select(e => e.Time?.Date).Distinct().Count() == 1;
        var pot = Pot.With(run.BaseMass);
        var rows = ImmutableArray.CreateBuilder<GridRow>();
        foreach (var ((row, place), content) in file.Rows.Select((r, i) => (r, i)).Zip(file.Contents().Select(file.Renamed)))
        {
            pot = content.Entries().Aggregate(pot, run.After);
            var body = Enumerable.Range(row.FirstEntry, row.EntryCount).Select(bodies.GetValueOrDefault).FirstOrDefault(b => b is not null);
            var reading = content.Reading;
            rows.Add(new(
            [
                Number(numbers, place),
                content.Time?.ToString(oneDay ? "HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "",
                content.Dosed is { } d ? ReadingWords.Grams(d.Poured.Grams) + (dosed.Length > 1 ? " " + d.Thickener : "") : "",
                .. dosed.Select(t => Figures.Dose(pot.DoseOf(t.Name))),
                ReadingWords.Seconds(reading?.Stir), ReadingWords.Seconds(reading?.Wait), ReadingWords.Exact(reading?.Value),
                Figures.OneDecimal(reading?.Temperature?.Celsius), body is null ? "" : Figures.FourDigits(body.Value.MilliPascalSeconds),
                Figures.OneDecimal(reading?.Acidity?.Ph), ReadingWords.Plain(reading?.StringLength?.Millimeters),
                Remark(content, body?.Doubted == true),
            ])
            { IsStruck = content.Void is not null });
        }

        return Used(new(
            [
                .. GridColumn.Numbers(
                [
                    Say("row"), Say("time"), Say("poured g"), .. dosed.Select(t => $"{t.Name} %"),
                    Say("stir s"), Say("wait s"), ReadingWords.Unit(run.MethodInForce),
                    "°C", Say($"mPa·s at {RunFacts.Temperature(run)}"), "pH", Say("string mm"),
                ]),
                new(Say("remark")),
            ],
            [.. rows.Skip(from)]));
    }

    /// <summary>The number of a row: the log's, else its place counted from 1.</summary>
    public static string Number(ImmutableArray<int> numbers, int place)
        => (numbers.IsEmpty ? place + 1 : numbers[place]).ToString(Numbers);

    private static string Remark(FileRow content, bool isDoubted)
    {
        string?[] parts =
        [
            content.Void is { } reason ? Say($"void: {reason}") : null,
            content.Replaces ? Say("in place of the row above") : null,
            content.Taken is { } taken ? Say($"{ReadingWords.Grams(taken.Grams)} g taken out") : null,
            content.LetDown is { } added ? Say($"{ReadingWords.Grams(added.Grams)} g of base added") : null,
            content.Water is { } water ? Say($"{ReadingWords.Grams(water.Grams)} g of water added") : null,
            isDoubted ? Say("doubted: counts for less") : null,
            content.Note,
        ];
        return string.Join("; ", parts.OfType<string>());
    }

    /// <summary>The table without columns that no row fills.</summary>
    private static Block.Grid Used(Block.Grid grid)
    {
        int[] used = [.. Enumerable.Range(0, grid.Columns.Length)
            .Where(c => c == grid.Columns.Length - 1 || grid.Rows.Any(r => r.Cells[c].Length > 0))];
        return new(
            [.. used.Select(c => grid.Columns[c])], [.. grid.Rows.Select(r => r with { Cells = [.. used.Select(c => r.Cells[c])] })]);
    }
}
