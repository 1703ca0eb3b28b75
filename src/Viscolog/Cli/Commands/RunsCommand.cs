using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Text;

namespace Viscolog.Cli.Commands;

/// <summary>The runs of the log.</summary>
internal sealed class RunsCommand : CalledCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- runs --base Ledge --log my-log";

    private readonly Option<string?> _base = TextOption.Create("--base", "NAME", "Only runs of this base.");
    private readonly Option<string?> _thickener = TextOption.Create("--thickener", "NAME", "Only runs with this thickener.");
    private readonly Option<string?> _text = TextOption.Create(
        "--text", "TEXT", "Only runs whose name, base, lot or thickeners contain this text; case is ignored.");
    private readonly Option<DateOnly?> _since = DayOption.Create("--since", "Only runs with something logged on this day or later.");
    private readonly Option<DateOnly?> _until = DayOption.Create("--until", "Only runs with nothing logged after this day.");

    private readonly RunComparison _comparison = new();

    public RunsCommand()
        : base("runs", "List the runs of the log.", Example)
        => Take([_base, _thickener, _text, _since, _until, .. _comparison.All]);

    protected override ExitCode Run(Invocation call) => call.WithLog(LogUse.Read, log =>
    {
        var filter = new RunFilter(call.Value(_base), call.Value(_thickener), call.Value(_text), call.Value(_since), call.Value(_until));
        var runs = log.Runs().Where(filter.Takes).ToList();
        return _comparison.IsAsked(call)
            ? _comparison.Answer(call, log, runs)
            : call.Answer(() => new RunsAnswer([.. runs.Select(RunsAnswer.Run.Of)]), terminal => Write(terminal, runs, filter));
    });

    private static void Write(CallOutput terminal, List<RunSummary> runs, RunFilter filter)
    {
        if (runs.Count == 0)
        {
            terminal.Line(filter.IsEmpty ? Say("the log has no runs yet; 'viscolog import FILE' brings one in") : Say("no run matches"));
            return;
        }

        var table = new TextTable(
            Say("run", "head"), Say("name"), Say("base"), Say("thickeners"), Say("entries", "head"), Say("readings", "head"),
            Say("last", "head"));
        foreach (var run in runs)
        {
            table.Add(
                Number(run.Number), Text(run.Header.Name, 32), Text(run.Header.Base.Name, 16), Text(string.Join(", ", run.Thickeners), 20),
                Number(run.Entries), Number(run.Readings),
                run.Last.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture));
        }

        terminal.Table(table);
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Text(string? text, int length) => PlainText.Shorten(TerminalText.Of(text ?? ""), length);
}

/// <summary>Which runs a list shows; null lets all through.</summary>
internal sealed record RunFilter(string? Base, string? Thickener, string? Text, DateOnly? Since, DateOnly? Until)
{
    public bool IsEmpty => this is { Base: null, Thickener: null, Text: null, Since: null, Until: null };

    public bool Takes(RunSummary run)
    {
        var day = DateOnly.FromDateTime(run.Last.Date);
        return (Base is null || Same(run.Header.Base.Name, Base))
            && (Thickener is null || run.Thickeners.Any(t => Same(t, Thickener)))
            && (Text is null || run.Says(Text))
            && (Since is null || day >= Since)
            && (Until is null || day <= Until);
    }

    private static bool Same(string? left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
