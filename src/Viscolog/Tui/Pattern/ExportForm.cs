namespace Viscolog.Tui.Pattern;

/// <summary>The forms that ask where a file is to go.</summary>
internal static class ExportForm
{
    public static Form<string> Picture() => Path("Export the picture", "chart.svg", ".svg, .pdf or .png");

    public static Form<string> Practice() => Path("Export picture or handout", "handout.html", ".html, .svg, .pdf, .png");

    public static Form<string> Scores() => Path("Export the score sheet", "scores.csv", ".csv");

    public static Form<string> Runs() => Path("Export run files", "exported-runs", "a folder");

    private static Form<string> Path(string title, string usual, string hint) => new(
        title,
        "",
        [new("where to", usual, hint)],
        texts => texts[0].Trim() is { Length: > 0 } path
            ? FormAnswer<string>.Of(System.IO.Path.GetFullPath(path))
            : FormAnswer<string>.Wrong(0, "a path"));
}
