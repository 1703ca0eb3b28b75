using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>Help for a screen: its keys and what they do.</summary>
internal static class HelpPage
{
    public static string[] Bench { get; } =
    [
        "Type the reading and press Enter: it is saved, and the advice is worked out anew.",
        "The wait comes from the clock; type another in its field where the clock is wrong.",
        "",
        "Enter   save the reading (or the note alone)      Tab     next field",
        "+       the advised grams went in (field empty)   F2      other grams went in",
        "F3      stirring begins, stirring ends            F4      pH, temperature, string, fault",
        "F5      make the chosen entry void, put it right  Up/Down choose an entry",
        "F6      the chart alone, and export               F7      base, water in; sample out",
        "F8      target, tolerance, risk                   F9      the list of runs",
        "F10     check it against its specification        Ctrl+Q  quit",
        "",
        "Units: 1.45 Pa.s, 1450 cP, 2 mL, 73.4 F. Torque with its speed: 35.2@20.",
        "What was saved is on the disk before the screen says so. Nothing is ever deleted.",
        "An addition can't be taken out again: read when the pot has settled, then dose.",
        "",
        "Alkali and amines burn skin and eyes: goggles and gloves. Raise no dust. Thickeners",
        "and binders hold preservatives. The safety data sheet and local rules decide.",
    ];

    public static string[] Runs { get; } =
    [
        "Type to search; Up and Down choose a run.",
        "",
        "Enter   open the chosen run       F2      begin a new run",
        "F4      mark or unmark            F5      compare the marked runs on one chart",
        "F6      check the chosen run      F9      trend of its product's batches",
        "F7      export the marked runs, or the chosen one, as run files",
        "F8      materials                 F10     practice pots, apart from this log",
        "Esc     back                      Ctrl+Q  quit",
    ];

    public static string[] Check { get; } =
    [
        "The batch against a specification: its value at the reference temperature with its",
        "uncertainty and what that is made of, the probability that it conforms, the verdict,",
        "and what to do. Readings that had not settled, or lie far off the others, don't count.",
        "",
        "Up/Down   another specification       PgUp/PgDn scroll",
        "F4        log a certified oil read by the run's method, to know the method's bias",
        "F9        trend of the product        Esc       back",
        "Ctrl+Q    quit",
    ];

    public static string[] Trend { get; } =
    [
        "A product's batches in their order, each at the value that its check finds; below them",
        "the moving range from each to the next. Limits from the first 20.",
        "Signals: one point beyond the limits; two of three beyond two thirds of the way to one;",
        "four of five beyond one third of the way; eight in a row on one side of the mean.",
        "",
        "Up/Down   another product             F6        log or linear scale",
        "F7        export SVG, PDF or PNG      PgUp/PgDn scroll",
        "Esc       back                        Ctrl+Q    quit",
    ];

    public static string[] Materials { get; } =
    [
        "Bases, thickeners, methods and specifications that new runs are offered.",
        "",
        "Enter   change the chosen one     F2      add one",
        "F5      retire it, or offer it again; nothing that was used is deleted",
        "F6      a method: log a certified oil that was read by it; its bias stands beside it",
        "Esc     back                      Ctrl+Q  quit",
    ];

    public static string[] Practice { get; } =
    [
        "A pot with a hidden curve: dose, stir, wait, read. The curve is shown at the end.",
        "",
        "Enter   pour the grams typed; on the empty field, write the reading down",
        "F2      let down with base                  F3      stirring begins, stirring ends",
        "F4      time at x1 or x10                   F8      done: show what was hidden",
        "F5      the same pot again                  F6      next view; the demonstration",
        "F7      export the picture or the scores    Esc     back; a game that goes on is lost",
        "",
        "The reading builds up while the pot stands: what it shows at once is not its body.",
        "What went in can't be taken out; only base brings the dose back.",
        "Nothing here touches the log. Scores are kept beside it, where a player is named.",
    ];

    public static Page Of(string title, IEnumerable<string> lines, int width, int height, bool isAscii)
    {
        var page = new Page(width, height, isAscii);
        page.Add(" " + title, Tone.Strong);
        page.Add("");
        foreach (var line in lines.SelectMany(l => l.Length < width - 2 ? [l] : Paragraph.Of(l, width - 2)).Take(height - 4))
        {
            page.Add(" " + line);
        }

        page.FillTo(height - 1);
        page.Add(" any key goes back", Tone.Dim);
        return page;
    }
}
