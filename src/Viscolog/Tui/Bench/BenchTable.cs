using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Bench;

/// <summary>The entries of the run on the bench screen, the last ones where not all fit.</summary>
internal static class BenchTable
{
    public static List<Piece> Lines(BenchState state, Page page, int width, int rows)
    {
        var columns = width >= 56;
        var run = state.Run.File.Run;
        var pair = PairRoles.Apply(run) ? PairRoles.Of(run) : null;
        var lines = new List<Piece>
        {
            new(pair is null
                ? Row(page, columns, width, "", "dose %", "went in g", "stir", "wait", BenchValue.Unit(run), "pH", "°C", "")
                : PairRow(page, columns, width, true, Doses(pair, t => Short(t)), "went in g", "stir", "wait", BenchValue.Unit(run), "mm", "")),
        };
        var shown = rows - 1;
        var all = state.Run.Rows.Length;
        var first = Page.First(state.ChosenPlace, all, shown);
        var thickener = run.Entries.OfType<Entry.Dosed>().LastOrDefault(d => d.Counts)?.Thickener ?? run.Thickeners.FirstOrDefault()?.Name;
        var pot = Pot.With(run.BaseMass);
        foreach (var (content, place) in state.Run.File.Contents().Select((r, i) => (r, i)))
        {
            pot = content.Entries().Aggregate(pot, run.After);
            if (place < first || place >= first + shown)
            {
                continue;
            }

            var isChosen = state.Chosen == place;
            var tone = isChosen ? Tone.Chosen : content.Void is not null ? Tone.Dim : Tone.Plain;
            lines.Add(new((isChosen ? page.ChosenMark : content.Void is not null ? "x" : " ") + Cells(page, columns, width - 1, content, pair is null ? Dose(pot, thickener) : Doses(pair, t => Dose(pot, t)), pair is not null), tone));
        }

        return lines;
    }

    private static string Dose(Pot pot, string? thickener) => thickener is null ? "" : pot.DoseOf(thickener).Percent.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Short(string thickener) => PlainText.Shorten(thickener, 4, "");

    private static string Doses(PairRoles pair, Func<string, string> of) => $"{of(pair.BodyThickener.Name)}+{of(pair.StringThickener.Name)}";

    private static string Cells(Page page, bool wide, int width, FileRow content, string dose, bool ofPair)
    {
        var reading = content.Reading;
        var went = content switch
        {
            { Dosed: { } d } => $"{(ofPair ? Short(d.Thickener) + " " : "")}{d.Poured.Grams.ToString("0.00##", CultureInfo.InvariantCulture)}",
            { LetDown: { } b } => $"base {b.Grams.ToString("0.##", CultureInfo.InvariantCulture)}",
            { Water: { } w } => $"water {w.Grams.ToString("0.##", CultureInfo.InvariantCulture)}",
            { Taken: { } t } => $"out {t.Grams.ToString("0.##", CultureInfo.InvariantCulture)}",
            _ => "",
        };
        var length = reading?.StringLength is { } drawn ? FormattableString.Invariant($"{drawn.Millimeters:0.#}") : "";
        string?[] notes = [content.Void is { } reason ? $"void: {reason}" : null, content.Replaces ? "put right" : null, length.Length > 0 && !ofPair ? $"string {length} mm" : null, reading?.Fault is { } fault ? FileNames.Faults.Of(fault) : null, content.Note];
        return ofPair
            ? PairRow(page, wide, width, false, dose, went, Seconds(reading?.Stir), Seconds(reading?.Wait), Cell(reading?.Value), length, string.Join("; ", notes.OfType<string>()))
            : Row(
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

    /// <summary>Both doses, and the string in a column of its own; stirring and standing where there is room.</summary>
    private static string PairRow(Page page, bool wide, int width, bool isHead, string doses, string went, string stir, string wait, string value, string length, string note)
    {
        var row = (isHead ? " " : "") + page.Fit(doses, 9, true) + " " + page.Fit(went, 10, true) + (wide ? " " + page.Fit(stir, 4, true) + " " + page.Fit(wait, 4, true) : "")
            + " " + page.Fit(value, 9, true) + " " + page.Fit(length, 4, true) + " ";
        var left = width - row.Length;
        return left > 2 ? row + page.Fit(note, left) : row;
    }

    private static string Seconds(TimeSpan? span) => span?.TotalSeconds.ToString("0", CultureInfo.InvariantCulture) ?? "";

    /// <summary>A torque as it is typed, since the words for it are wider than the cell.</summary>
    private static string Cell(InstrumentValue? value)
        => value?.Speed is { } rpm ? FormattableString.Invariant($"{value.Shown:0.#}%@{rpm:0.#}") : ReadingWords.Value(value);
}
