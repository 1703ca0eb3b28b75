namespace Viscolog.Tui.Pattern;

/// <summary>Help for another screen.</summary>
internal static class HelpScreen
{
    private static readonly KeyTable<object> Keys = new(
        "Help",
        new("^Q", null, "") { Role = KeyRole.Quits },
        new(KeyTable<object>.AnyKey, "goes back", "") { Role = KeyRole.Leaves });

    public static ScreenView On(TuiContext context, string title, Func<int, IEnumerable<string>> lines)
        => new ScreenView<HelpState, object>(context, new(_ => Keys, (state, _, _) => state, PageOf), new HelpState(title, lines));

    public static Page PageOf(HelpState state, Canvas canvas)
    {
        var page = new Page(canvas);
        page.Add(" " + state.Title, Tone.Strong);
        foreach (var line in state.Lines(canvas.Width - 2).Take(canvas.Height - 2))
        {
            page.Add(" " + line);
        }

        page.FillTo(canvas.Height - 1);
        page.Add(Keys.Footer(canvas.Width), Tone.Dim);
        return page;
    }
}

/// <summary>What a help screen is about.</summary>
/// <param name="Title">The screen.</param>
/// <param name="Lines">Its help, for so many columns.</param>
internal sealed record HelpState(string Title, Func<int, IEnumerable<string>> Lines);
