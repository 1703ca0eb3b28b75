using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Wording;

namespace Viscolog.Tui;

/// <summary>The entries of the run on the bench screen, the last ones where not all fit.</summary>
internal static class BenchTable
{
    public static List<Piece> Lines(BenchState state, Page page, int width, int rows)
    {
        var columns = width >= 56;
        var lines = new List<Piece>
        {
            new(Row(page, columns, width, "", "dose %", "went in g", "stir", "wait", BenchValue.Unit(state.Run.File.Run), "pH", "°C", "")),
        };
        var shown = rows - 1;
        var all = state.Run.Rows.Length;
        var first = Math.Clamp(state.ChosenPlace - (shown / 2), 0, Math.Max(0, all - shown));
        var run = state.Run.File.Run;
        var thickener = run.Entries.OfType<Entry.Dosed>().LastOrDefault(d => d.Counts)?.Thickener ?? run.Thickeners.FirstOrDefault()?.Name;
        var pot = Pot.With(run.BaseMass);
        foreach (var (content, place) in state.Run.File.Contents().Select((r, i) => (r.Content, i)))
        {
            pot = content.Entries().Aggregate(pot, run.After);
            if (place < first || place >= first + shown)
            {
                continue;
            }

            var isChosen = state.Chosen == place;
            var tone = isChosen ? Tone.Chosen : content.Void is not null ? Tone.Dim : Tone.Plain;
            lines.Add(new((isChosen ? page.IsAscii ? ">" : "▸" : content.Void is not null ? "x" : " ") + Cells(page, columns, width - 1, content, thickener is null ? "" : pot.DoseOf(thickener).Percent.ToString("0.00", CultureInfo.InvariantCulture)), tone));
        }

        return lines;
    }

    private static string Cells(Page page, bool wide, int width, RowContent content, string dose)
    {
        var reading = content.Reading;
        var went = content switch
        {
            { Dosed: { } d } => $"{d.Poured.Grams.ToString("0.00##", CultureInfo.InvariantCulture)}",
            { LetDown: { } b } => $"base {b.Grams.ToString("0.##", CultureInfo.InvariantCulture)}",
            { Water: { } w } => $"water {w.Grams.ToString("0.##", CultureInfo.InvariantCulture)}",
            { Taken: { } t } => $"out {t.Grams.ToString("0.##", CultureInfo.InvariantCulture)}",
            _ => "",
        };
        string?[] notes = [content.Void is { } reason ? $"void: {reason}" : null, content.Replaces ? "put right" : null, reading?.StringLength is { } s ? FormattableString.Invariant($"string {s.Millimeters:0.#} mm") : null, reading?.Fault is { } fault ? FaultNames.Of(fault) : null, content.Note];
        return Row(
            page, wide, width, null, dose, went, Seconds(reading?.Stir), Seconds(reading?.Wait), Cell(reading?.Value),
            reading?.Acidity?.Ph.ToString("0.0#", CultureInfo.InvariantCulture) ?? "", reading?.Temperature?.Celsius.ToString("0.#", CultureInfo.InvariantCulture) ?? "", string.Join("; ", notes.OfType<string>()));
    }

    private static string Row(Page page, bool wide, int width, string? lead, string dose, string went, string stir, string wait, string value, string ph, string temp, string note)
    {
        var row = (lead is null ? "" : " ") + page.Fit(dose, 6, true) + " " + page.Fit(went, 9, true) + (wide ? " " + page.Fit(stir, 4, true) : "") + " " + page.Fit(wait, 4, true) + " " + page.Fit(value, 9, true)
            + (wide ? " " + page.Fit(ph, 4, true) + " " + page.Fit(temp, 4, true) : "") + " ";
        var left = width - row.Length;
        return left > 2 ? row + page.Fit(note, left) : row;
    }

    private static string Seconds(TimeSpan? span) => span?.TotalSeconds.ToString("0", CultureInfo.InvariantCulture) ?? "";

    /// <summary>A torque as it is typed, since the words for it are wider than the cell.</summary>
    private static string Cell(InstrumentValue? value)
        => value is InstrumentValue.Torque torque ? FormattableString.Invariant($"{torque.OfFullScale.Percent:0.#}%@{torque.RevolutionsPerMinute:0.#}") : ReadingWords.Value(value);
}
