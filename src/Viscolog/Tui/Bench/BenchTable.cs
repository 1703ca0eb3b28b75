using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Bench;

/// <summary>The entries of the run on the bench screen, the last ones where not all fit.</summary>
internal static class BenchTable
{
    /// <summary>From so many columns on stirring and what was read beside have cells of their own.</summary>
    private const int Wide = 56;

    public static List<Piece> Lines(BenchState state, Page page, int width, int rows)
    {
        var run = state.Run.File.Run;
        var pair = PairRoles.In(run);
        var widths = Widths(pair is not null, width >= Wide);
        string[] heads = pair is null
            ? [Say("dose %"), Say("added g"), Say("stir", "column"), Say("wait", "column"), BenchValue.Unit(run), "pH", "°C"]
            : [Doses(pair, Short), Say("added g"), Say("stir", "column"), Say("wait", "column"), BenchValue.Unit(run), "mm"];
        var lines = new List<Piece> { new(" " + Row(page, widths, heads, "", width - 1)) };
        var shown = rows - 1;
        var first = Page.First(state.ChosenPlace, state.Run.Rows.Length, shown);
        var thickener = run.Entries.OfType<Entry.Dosed>().LastOrDefault(d => d.Counts) is { } last
            ? run.NameNow(last.Thickener)
            : run.Thickeners.FirstOrDefault()?.Name;
        var pot = Pot.With(run.BaseMass);
        foreach (var (content, place) in state.Run.File.Contents().Select((r, i) => (state.Run.File.Renamed(r), i)))
        {
            pot = content.Entries().Aggregate(pot, run.After);
            if (place < first || place >= first + shown)
            {
                continue;
            }

            var dose = pair is not null ? Doses(pair, t => Dose(pot, t)) : thickener is not null ? Dose(pot, thickener) : "";
            var (mark, tone) = state.Chosen == place ? (page.ChosenMark, Tone.Chosen)
                : content.Void is not null ? ("x", Tone.Dim)
                : (" ", Tone.Plain);
            var ofPair = pair is not null;
            lines.Add(new(mark + Row(page, widths, [dose, .. Cells(content, ofPair)], Notes(content, ofPair), width - 1), tone));
        }

        return lines;
    }

    /// <summary>The widths of the cells; 0 where there is no room for one.</summary>
    private static int[] Widths(bool ofPair, bool isWide) => (ofPair, isWide) switch
    {
        (false, true) => [6, 9, 4, 4, 9, 4, 4],
        (false, false) => [6, 9, 0, 4, 9, 0, 0],
        (true, true) => [9, 10, 4, 4, 9, 4],
        (true, false) => [9, 10, 0, 0, 9, 4],
    };

    private static string Row(Page page, int[] widths, string[] cells, string note, int width)
    {
        var row = string.Concat(widths.Zip(cells).Where(c => c.First > 0).Select(c => page.Fit(c.Second, c.First, true) + " "));
        var left = width - row.Length;
        return left > 2 ? row + page.Fit(note, left) : row;
    }

    private static string Dose(Pot pot, string thickener) => pot.DoseOf(thickener).Percent.ToString("0.00", Numbers);

    private static string Short(string thickener) => PlainText.Shorten(thickener, 4, "");

    private static string Doses(PairRoles pair, Func<string, string> of)
        => $"{of(pair.BodyThickener.Name)}+{of(pair.StringThickener.Name)}";

    /// <summary>What went in and what was read; of a pair the string's length has a cell, of one thickener pH and temperature.</summary>
    private static string[] Cells(FileRow content, bool ofPair)
    {
        var reading = content.Reading;
        var went = content switch
        {
            { Dosed: { } d } => (ofPair ? Short(d.Thickener) + " " : "") + d.Poured.Grams.ToString("0.00##", Numbers),
            { LetDown: { } b } => Say($"base {b.Grams:0.##}"),
            { Water: { } w } => Say($"water {w.Grams:0.##}"),
            { Taken: { } t } => Say($"out {t.Grams:0.##}"),
            _ => "",
        };
        string[] cells = [went, Seconds(reading?.Stir), Seconds(reading?.Wait), Cell(reading?.Value)];
        var ph = reading?.Acidity?.Ph.ToString("0.0#", Numbers) ?? "";
        var temperature = reading?.Temperature?.Celsius.ToString("0.#", Numbers) ?? "";
        return ofPair ? [.. cells, Length(content)] : [.. cells, ph, temperature];
    }

    /// <summary>An entry in a few words, for a question about it.</summary>
    public static string Words(FileRow content)
    {
        string[] parts = content switch
        {
            { Dosed: { } dosed } => [$"{Shown.Grams(dosed.Poured)} {dosed.Thickener}"],
            { LetDown: { } grams } => [Say($"{Shown.Grams(grams)} of base")],
            { Water: { } grams } => [Say($"{Shown.Grams(grams)} of water")],
            { Taken: { } grams } => [Say($"{Shown.Grams(grams)} taken out")],
            _ => [],
        };
        var read = content.Reading?.Value is { } value ? [BenchValue.Words(value)] : Array.Empty<string>();
        var notes = Notes(content, ofPair: false) is { Length: > 0 } note ? [note] : Array.Empty<string>();
        return PlainText.Shorten(string.Join(", ", [.. parts, .. read, .. notes]), 80);
    }

    private static string Notes(FileRow content, bool ofPair)
    {
        string?[] notes =
        [
            content.Void is { } reason ? Say($"void: {BenchChange.Why(reason)}") : null,
            content.Replaces ? Say("corrected") : null,
            !ofPair && Length(content) is { Length: > 0 } length ? Say($"string {length} mm") : null,
            content.Reading?.Fault is { } fault ? FaultWords.Of(fault) : null,
            content.Note,
        ];
        return string.Join("; ", notes.OfType<string>());
    }

    private static string Length(FileRow content)
        => content.Reading?.StringLength is { } drawn ? drawn.Millimeters.ToString("0.#", Numbers) : "";

    private static string Seconds(TimeSpan? span) => span?.TotalSeconds.ToString("0", Numbers) ?? "";

    /// <summary>A torque as it is typed, since the words for it are wider than the cell.</summary>
    private static string Cell(InstrumentValue? value)
        => value?.Speed is { } rpm ? string.Create(Numbers, $"{value.Shown:0.#}%@{rpm:0.#}") : ReadingWords.Value(value);
}
