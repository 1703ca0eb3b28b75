using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>All that happened to one logged run.</summary>
internal sealed class ShowCommand : CalledCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- show 1 --log my-log";

    private readonly Argument<string> _run = new("RUN") { Description = "The number of a logged run, or its UUID." };

    public ShowCommand()
        : base("show", "Show a logged run: its header, every entry in order, doses, readings, what was voided and why.", Example)
        => Take(_run);

    protected override ExitCode Run(Invocation call)
        => call.WithLog(LogUse.Read, log => RunSource.Stream(log, call.Value(_run)) is { } logged
        ? call.AnswerLong(() => RunAnswer.Of(logged), terminal => Write(terminal, logged))
        : call.Refuse(RunSource.Unknown(call.Value(_run))));

    private static void Write(CallOutput terminal, StreamedRun logged)
    {
        terminal.Line(Say($"run {logged.Number} · {RunTitle.Of(logged.Header.Run)}"));
        foreach (var line in HeaderText.Of(logged.Header))
        {
            terminal.Line("  " + line);
        }

        terminal.Line();
        var whole = logged.Header.Run;
        var dosed = logged.Rows.Select(r => r.Row.Dosed?.Thickener)
            .OfType<string>()
            .Select(whole.NameNow)
            .ToHashSet(StringComparer.Ordinal);
        var thickeners = whole.Thickeners.Where(t => dosed.Contains(t.Name)).ToList();
        string[] names =
        [
            Say("row", "head"), .. thickeners.Select(t => $"{t.Name} %"), Say("poured g"), Say("stir s"), Say("wait s"),
            ReadingWords.Unit(whole.MethodInForce), "°C", "pH", Say("string mm"), Say("base g"), Say("water g"), Say("taken g"),
            Say("time"), Say("note"),
        ];
        terminal.Table(names, () => Cells(logged, thickeners));
    }

    private static IEnumerable<string[]> Cells(StreamedRun logged, IReadOnlyList<Thickener> thickeners)
    {
        var whole = logged.Header.Run;
        var pot = Pot.With(whole.BaseMass);
        foreach (var (number, content, _) in logged.Rows)
        {
            pot = content.Entries().Aggregate(pot, whole.After);
            var reading = content.Reading;
            yield return
            [
                number.ToString(CultureInfo.InvariantCulture),
                .. thickeners.Select(t => pot.DoseOf(t.Name).Percent.ToString("0.00", Numbers)),
                ReadingWords.Grams(content.Dosed?.Poured.Grams),
                ReadingWords.Seconds(reading?.Stir), ReadingWords.Seconds(reading?.Wait), ReadingWords.Value(reading?.Value),
                ReadingWords.Plain(reading?.Temperature?.Celsius), ReadingWords.Plain(reading?.Acidity?.Ph),
                ReadingWords.Plain(reading?.StringLength?.Millimeters),
                ReadingWords.Grams(content.LetDown?.Grams), ReadingWords.Grams(content.Water?.Grams),
                ReadingWords.Grams(content.Taken?.Grams),
                content.Time?.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "",
                Note(content),
            ];
        }
    }

    private static string Note(FileRow content)
    {
        string?[] parts =
        [
            content.Void is { } reason ? Say($"VOID: {reason}") : null,
            content.Replaces ? Say("in place of the row above") : null,
            content.Reading?.Fault is { } fault ? FileNames.Faults.Of(fault) : null,
            content.Note,
        ];
        return string.Join("; ", parts.OfType<string>());
    }
}
