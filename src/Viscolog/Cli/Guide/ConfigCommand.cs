using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Cli.Guide;

/// <summary>Shows and changes what is set for calls that do not say it themselves.</summary>
internal sealed class ConfigCommand : CalledCommand
{
    private readonly Argument<string[]> _changes = new("KEY=VALUE")
    {
        Description = $"What to set: {string.Join(", ", Settings.Keys.Select(k => k.Name))}; without a value it is taken out.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    public ConfigCommand()
        : base("config", "Show what is set in the user's configuration file, and where each value comes from; or set something.",
            "dotnet run --project src/Viscolog -- config")
        => Take(_changes);

    protected override ExitCode Run(Invocation call)
    {
        var settings = call.Settings;
        var changes = new List<(string, string)>();
        foreach (var word in call.Value(_changes))
        {
            var (name, value) = word.Split('=', 2, StringSplitOptions.TrimEntries) is [var n, var v] ? (n, v) : (word, null);
            var key = Settings.Keys.FirstOrDefault(k => k.Name == name);
            if (key is null || value is null || (value.Length > 0 && !key.Allows(value)))
            {
                return call.Wrong($"read {OneLine.Quoted(word)}, expected KEY=VALUE, {Settings.Expected(key)}");
            }

            changes.Add((name, name == "log" && value.Length > 0 ? Path.GetFullPath(value) : value));
        }

        if (changes.Count > 0)
        {
            if (!settings.Write(changes).Is(out _, out var trouble))
            {
                return call.Refuse(trouble);
            }

            settings = Settings.Read(_ => settings.Path, null);
        }

        return call.Answer(() => new ConfigAnswer(settings.Path, [.. All(settings, call)]), terminal => Write(terminal, settings, call));
    }

    private static IEnumerable<ConfigAnswer.Setting> All(Settings settings, Invocation call) => Settings.Keys.Select(k =>
        k.Name == "log" && call.Surroundings.Variable(LogPlace.Variable) is { Length: > 0 } named ? new ConfigAnswer.Setting(
            k.Name, named, "$" + LogPlace.Variable)
        : k.Name == "color" && call.Surroundings.Variable("NO_COLOR") is { Length: > 0 } ? new(k.Name, "no", "$NO_COLOR")
        : settings.Values.TryGetValue(k.Name, out var value) ? new(k.Name, value, "the file")
        : new(k.Name, k.Otherwise, "the default"));

    private static void Write(CallOutput terminal, Settings settings, Invocation call)
    {
        terminal.Line($"{settings.Path}{(File.Exists(settings.Path) ? "" : " (not there yet)")}");
        terminal.Line();
        var table = new TextTable("key", "value", "from", "may be");
        foreach (var (setting, key) in All(settings, call).Zip(Settings.Keys))
        {
            table.Add(setting.Key, setting.Value ?? "", setting.From, key.Words);
        }

        terminal.Table(table);
    }
}
