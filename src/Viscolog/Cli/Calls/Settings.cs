using System.Globalization;
using Viscolog.Languages;
using Viscolog.Output;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Typing;

namespace Viscolog.Cli.Calls;

/// <summary>What the user's configuration file sets, for calls that do not say it themselves.</summary>
/// <param name="Path">The file; it need not be there.</param>
/// <param name="Values">What it sets, by key.</param>
internal sealed record Settings(string Path, IReadOnlyDictionary<string, string> Values)
{
    /// <summary>The variable of the environment that names the file.</summary>
    public const string Variable = "VISCOLOG_CONFIG";

    /// <summary>The greatest chance of going over that may be asked for.</summary>
    public static NumberRange RiskRange { get; } = new("%", 0.01, 50);

    /// <summary>Every key, with what it may say and what stands where it is not set.</summary>
    public static IReadOnlyList<SettingKey> Keys { get; } =
    [
        new("log", "the log's folder", "the user's data folder", text => text.Length > 0),
        new(
            "risk",
            "greatest chance of going over, in % from 0.01 to 50",
            "4.5",
            text => TypedNumber.Read(text, RiskRange, out _) is not null),
        new("color", "yes or no", "yes", IsYesOrNo),
        new("ascii", "yes or no", "no", IsYesOrNo),
        new("theme", "terminal, dark or light: the ground of the screens", "terminal", text => text is "terminal" or "dark" or "light"),
        new("mouse", "yes, or no to leave it to the terminal", "yes", IsYesOrNo),
        new("language", "en or de: what screens, advice and papers speak", "the locale's", text => text is "en" or "de"),
        new("take", "yes to log what instruments read by itself, or no to have it wait for Enter", "no", IsYesOrNo),
    ];

    /// <summary>What is wrong with the file, a line each.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>The log's folder; null where none is set.</summary>
    public string? Log => Values.GetValueOrDefault("log");

    /// <summary>The risk in %; null where none is set.</summary>
    public double? Risk => Values.TryGetValue("risk", out var typed) ? TypedNumber.Read(typed, RiskRange, out _) : null;

    /// <summary>Whether letters may stand out.</summary>
    public bool HasColor => Values.GetValueOrDefault("color") != "no";

    /// <summary>Whether to keep to printable ASCII.</summary>
    public bool IsAscii => Values.GetValueOrDefault("ascii") == "yes";

    /// <summary>The ground that the screens' colours are made for; null where none is set.</summary>
    public string? Theme => Values.GetValueOrDefault("theme");

    /// <summary>What screens, advice and papers speak; null where none is set.</summary>
    public Language? Language => Values.GetValueOrDefault("language") is { } set ? Of(set) : null;

    /// <summary>Whether the mouse is the screens'.</summary>
    public bool HasMouse => Values.GetValueOrDefault("mouse") != "no";

    /// <summary>Whether readings of instruments that have come to rest are logged by themselves.</summary>
    public bool TakesReadings => Values.GetValueOrDefault("take") == "yes";

    /// <summary>Reads the file that the variable names, else the usual one.</summary>
    /// <param name="variable">A variable of the environment; null where it is not set.</param>
    /// <param name="usual">The usual file; null where there is none.</param>
    public static Settings Read(Func<string, string?> variable, string? usual)
    {
        var path = variable(Variable) is { Length: > 0 } named ? System.IO.Path.GetFullPath(named) : usual;
        if (path is null || !File.Exists(path))
        {
            return new(path ?? "", new Dictionary<string, string>(StringComparer.Ordinal));
        }

        try
        {
            return Parse(path, File.ReadAllLines(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(path, new Dictionary<string, string>(StringComparer.Ordinal))
            {
                Warnings = [$"{path}: can't be read ({e.Message}); nothing in it is used"],
            };
        }
    }

    /// <summary>The usual file, in the user's folder of configuration.</summary>
    public static string UsualPath()
        => System.IO.Path.Combine(
            Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify),
            "viscolog",
            "config.txt");

    /// <summary>The file with some values changed; one without a value is taken out.</summary>
    public Outcome<string> Write(IEnumerable<(string Key, string Value)> changes)
    {
        var values = Values.ToDictionary(StringComparer.Ordinal);
        foreach (var (key, value) in changes)
        {
            values[key] = value;
        }

        var lines = Keys.Where(k => values.GetValueOrDefault(k.Name) is { Length: > 0 }).Select(k => $"{k.Name}: {values[k.Name]}\n");
        try
        {
            Directory.CreateDirectory(
                System.IO.Path.GetDirectoryName(Path) ?? throw new IOException("it is the name of a device or a drive, not of a file"));
            WholeFile.Write(Path, System.Text.Encoding.UTF8.GetBytes(string.Concat(lines)), true);
            return Path;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Refused($"{Path}: cannot be written: {e.Message}");
        }
    }

    /// <summary>The language of the locale that the environment names, as POSIX reads it (IEEE Std 1003.1, section 8.2).</summary>
    public static Language OfLocale(Func<string, string?> variable)
    {
        string[] names = ["LC_ALL", "LC_MESSAGES", "LANG"];
        return Of(names.Select(variable).FirstOrDefault(v => !string.IsNullOrEmpty(v)) ?? "");
    }

    private static Language Of(string locale)
        => locale == "de" || locale.StartsWith("de_", StringComparison.Ordinal) ? Languages.Language.German : Languages.Language.English;

    private static Settings Parse(string path, string[] lines)
    {
        var (values, warnings) = (new Dictionary<string, string>(StringComparer.Ordinal), new List<string>());
        foreach (var (i, line) in lines.Select(l => l.Trim()).Index().Where(l => l.Item.Length > 0 && l.Item[0] != '#'))
        {
            var mark = line.IndexOf(':', StringComparison.Ordinal);
            var (name, value) = mark < 0 ? (line, "") : (line[..mark].Trim(), line[(mark + 1)..].Trim());
            var key = Keys.FirstOrDefault(k => k.Name == name || (k.Name == "color" && name == "colour"));
            if (key is null || !key.Allows(value))
            {
                warnings.Add(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{path}, line {i + 1}: read {OneLine.Quoted(line)}, expected {Expected(key)}; it is not used"));
            }
            else
            {
                values[key.Name] = value;
            }
        }

        return new(path, values) { Warnings = warnings };
    }

    /// <summary>What ought to stand there.</summary>
    public static string Expected(SettingKey? key)
        => key is null ? $"a key: {string.Join(", ", Keys.Select(k => k.Name))}" : $"{key.Name}: {key.Words}";

    private static bool IsYesOrNo(string text) => text is "yes" or "no";
}

/// <summary>A key of the configuration file.</summary>
/// <param name="Name">The key.</param>
/// <param name="Words">What it may say.</param>
/// <param name="Otherwise">What stands where it is not set.</param>
/// <param name="Allows">Whether it may say a text.</param>
internal sealed record SettingKey(string Name, string Words, string Otherwise, Func<string, bool> Allows);
