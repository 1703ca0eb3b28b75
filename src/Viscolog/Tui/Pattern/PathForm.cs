namespace Viscolog.Tui.Pattern;

/// <summary>The form that asks where a file is to go.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Usual">What stands in the field at first.</param>
/// <param name="Hint">What endings there are.</param>
internal sealed record PathForm(string Title, string Usual, string Hint)
{
    /// <summary>What is said above the field; may be empty.</summary>
    public string About { get; init; } = "";

    /// <param name="of">The name of what is drawn, as a file's name without its ending.</param>
    public static PathForm Picture(string of) => new(Say("Export the picture"), $"{of}.svg", ".svg, .pdf, .png");

    /// <param name="of">The name of the pot, as a file's name without its ending.</param>
    public static PathForm Practice(string of) => new(Say("Export picture or handout"), $"{of}.html", ".html, .svg, .pdf");

    public static PathForm Scores() => new(Say("Export the score sheet"), "scores.csv", ".csv");

    public static PathForm Runs() => new(Say("Export run files"), "exported-runs", Say("a folder"));

    /// <param name="title">What is written.</param>
    /// <param name="of">Its name, as a file's name without its ending.</param>
    public static PathForm Paper(string title, string of) => new(title, $"{of}.html", Say(".html or .txt"));

    public Form<string> Form() => new(
        Title,
        About,
        [new(Say("where to"), Usual, Hint)],
        texts => texts[0].Trim() is { Length: > 0 } path
            ? FormAnswer<string>.Of(Path.GetFullPath(AtHome(path)))
            : FormAnswer<string>.Wrong(0, Say("a path")));

    /// <summary>A path with the home folder in place of a tilde at its beginning.</summary>
    private static string AtHome(string path) => path == "~" || path.StartsWith("~/", StringComparison.Ordinal)
        ? Environment.GetFolderPath(Environment.SpecialFolder.UserProfile) + path[1..]
        : path;
}
