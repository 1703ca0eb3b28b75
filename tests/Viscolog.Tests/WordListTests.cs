using System.CommandLine;
using System.Text.Json;
using System.Text.RegularExpressions;
using Viscolog.Cli;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.FlowFiles;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.RunFiles;
using Viscolog.Tests.Support;
using Viscolog.Text;
using Viscolog.TrendFiles;

namespace Viscolog.Tests;

/// <summary>Every word that a name is made of stands in docs/words.md, with where it is from.</summary>
public sealed partial class WordListTests
{
    [Fact]
    public void Every_word_of_a_name_is_listed_and_no_other()
        => Assert.Equal(
            Names().SelectMany(n => Word().Matches(n)).Select(m => m.Value).Distinct(StringComparer.OrdinalIgnoreCase)
                .Order(StringComparer.OrdinalIgnoreCase),
            Rows().SelectMany(r => Listed().Matches(r)).Select(m => m.Value.Trim('`')).Order(StringComparer.OrdinalIgnoreCase),
            StringComparer.OrdinalIgnoreCase);

    [Fact]
    public void Every_word_says_where_it_is_from()
        => Assert.All(Rows().Where(r => r.StartsWith('|')), r => Assert.Matches(@"^\| (`[a-z]+` ?)+ ?\| [A-Za-z].{7,} \|$", r));

    private static IEnumerable<string> Rows()
    {
        var lines = File.ReadAllLines(Checkout.At("docs/words.md"));
        return lines.SkipWhile(l => !l.StartsWith("## ", StringComparison.Ordinal)).Where(l => Listed().IsMatch(l));
    }

    private static IEnumerable<string> Names()
    {
        using var nowhere = new TerminalWriter(TextWriter.Null);
        var root = CommandLine.Parse([], new(nowhere, nowhere, new(80)), new(_ => null, TimeProvider.System)).RootCommandResult.Command;
        IEnumerable<string>[] named =
        [
            Commands(root).Skip(1).Select(c => c.Name),
            Commands(root).SelectMany(c => c.Options).SelectMany(o => o.Aliases.Prepend(o.Name)),
            Commands(root).SelectMany(c => c.Arguments).Select(a => a.Name),
            Columns.All.Select(c => c.Name),
            MaterialColumns.All.Select(c => c.Name).Concat(FlowColumns.All.Keys).Concat(OilColumns.All).Concat(TrendColumns.Others),
            HeaderKeys.All.Select(k => k.Name).Concat(ThickenerLine.Traits.Select(t => t.Name)),
            Settings.Keys.Select(k => k.Name),
            FileNames.Faults.Names.Select(n => n.Name).Concat(FileNames.Chemistries.Names.Select(n => n.Name)),
            Answered("methods").Concat(Answered("shapes")),
            MaterialKind.All,
            typeof(AnswerContext).Assembly.GetTypes().Where(t => t.Namespace == typeof(AnswerContext).Namespace)
                .Where(t => !typeof(System.Text.Json.Serialization.JsonSerializerContext).IsAssignableFrom(t) && t.IsClass)
                .SelectMany(t => t.GetProperties()).Where(p => p.Name != "EqualityContract")
                .Select(p => JsonNamingPolicy.SnakeCaseLower.ConvertName(p.Name)),
        ];
        return named.SelectMany(n => n);
    }

    private static IEnumerable<string> Answered(string command)
    {
        using var answer = JsonDocument.Parse(Called.With(command, "--json").Output);
        return [.. answer.RootElement.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.Array)
            .SelectMany(p => p.Value.EnumerateArray())
            .Select(i => i.GetProperty("name").GetString()!)];
    }

    private static IEnumerable<Command> Commands(Command root) => root.Subcommands.SelectMany(Commands).Prepend(root);

    [GeneratedRegex("[A-Za-z]+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Word();

    [GeneratedRegex("`[a-z]+`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Listed();
}
