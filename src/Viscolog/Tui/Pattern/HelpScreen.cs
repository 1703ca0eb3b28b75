namespace Viscolog.Tui.Pattern;

/// <summary>A text over another screen: its help, or more than it has room for.</summary>
internal static class HelpScreen
{
    internal static readonly KeyTable<HelpScrolled> Keys = new(
        "Help",
        new("^Q", null, "") { Role = KeyRole.Quits },
        new("Up/Down", null, "", new HelpScrolled(-1), new HelpScrolled(1)),
        new("PgUp/PgDn", null, "", new HelpScrolled(-10), new HelpScrolled(10)),
        new("Home/End", null, "", new HelpScrolled(-Scrolling.ToEnd), new HelpScrolled(Scrolling.ToEnd)),
        new(KeyTable<HelpScrolled>.AnyKey, "returns", "") { Role = KeyRole.Leaves });

    public static ScreenView On(TuiContext context, string title, Func<int, IEnumerable<string>> lines)
        => new ScreenView<HelpState, HelpScrolled>(
            context, new(_ => Keys, (state, scrolled, _) => state.Scroll(scrolled.By), PageOf), new HelpState(title, lines));

    public static Page PageOf(HelpState state, Canvas canvas)
    {
        var page = new Page(canvas);
        page.Add(" " + state.Title, Tone.Strong);
        page.Foot(page.AddScrolled([.. state.Lines(canvas.Width - 2).Select(l => new Piece(" " + l))], state.Passed), Keys);
        return page;
    }
}

/// <summary>The text is moved by so many lines.</summary>
internal sealed record HelpScrolled(int By);

/// <summary>What a help screen shows.</summary>
/// <param name="Title">The screen.</param>
/// <param name="Lines">The text, for so many columns.</param>
internal sealed record HelpState(string Title, Func<int, IEnumerable<string>> Lines)
{
    /// <summary>Lines that are passed over.</summary>
    public Scrolling Passed { get; init; }

    public HelpState Scroll(int by) => this with { Passed = Passed.By(by) };
}
