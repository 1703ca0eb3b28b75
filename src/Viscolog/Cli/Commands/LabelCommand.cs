using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Checking;
using Viscolog.Labels;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>Labels for a pot or a batch.</summary>
internal sealed class LabelCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- label sample-runs/checks/lantern-gel-21.csv --batch --sheet a4-2x4 "
        + "--copies 3 --out my-labels.html";

    private readonly Argument<string> _run = RunSource.Argument();
    private readonly Option<bool> _batch = FlagOption.Create("--batch", "The label of a batch in place of a pot's: value and verdict, "
        + "checked against --spec, --low and --high, the run's product or its target.");
    private readonly SpecificationOptions _specification = new();
    private readonly Option<string[]> _history = RunSource.History();
    private readonly Option<LabelSheet?> _sheet = SheetOption.Create();
    private readonly Option<int?> _start = CountOption.Create("--start", "The place of the first label on a sheet that is partly used, "
        + "counted along the rows from 1.", LabelSheet.All.Max(s => s.Count));
    private readonly Option<int?> _copies = CountOption.Create("--copies", "How many labels; default: 1.", LabelOrder.MostCopies);
    private readonly OutputOptions _output = new("Where to write: .html to print, or .txt; without it plain text is printed.", "file");

    public LabelCommand()
        : base("label", "Make labels for a pot or a batch: name, lot, dose, dates, value, cautions, and a QR code that holds the run's "
            + "identity. They are not the hazard labels that the law requires.", Example)
        => Take([_run, _batch, .. _specification.All, _history, _sheet, _start, _copies, .. _output.All]);

    protected override ExitCode Run(Invocation call)
    {
        var sheet = call.Value(_sheet) ?? LabelSheet.All[0];
        var start = call.Value(_start) ?? 1;
        if (Conflict(call, sheet, start) is { } conflict)
        {
            return call.Wrong(conflict);
        }

        if (RunSource.Read(call.Value(_run), call.Value(_history), call, out var code) is not { } named)
        {
            return code;
        }

        var label = call.Value(_batch) ? OfBatch(ref named, call, ref code) : Label.OfPot(named.File, call.Today);
        if (label is null)
        {
            return code;
        }

        call.Warn(named.Warnings);
        if (named.File.Id is null)
        {
            call.Warn([$"{named.Name}: the run has no UUID yet, so the QR code holds its name alone; 'viscolog import' gives it one"]);
        }

        var order = new LabelOrder(label, sheet) { Start = start, Copies = call.Value(_copies) ?? 1 };
        return _output.Write(call, order.Write) is { } written
            ? call.Written(written, path => new PaperAnswer(path))
            : call.Answer(
                () => new TextAnswer(LabelOrder.Words(label)), terminal => LabelText.Write(terminal, label));
    }

    private Label? OfBatch(ref NamedRun named, Invocation call, ref ExitCode code)
    {
        if (_specification.Find(ref named, call, out code) is not { } wanted)
        {
            return null;
        }

        var outcome = BatchChecks.Of(named.Bench.Request(named.File.Run, wanted, named.Earlier, call.Today));
        if (outcome is CheckOutcome.Checked { Check: var check })
        {
            return Label.OfBatch(named.File with { Run = check.Run }, check, call.Today);
        }

        code = call.Refuse($"{named.Name}: {CheckRemarks.Of(((CheckOutcome.Refused)outcome).Reason)}");
        return null;
    }

    private string? Conflict(Invocation call, LabelSheet sheet, int start)
        => start > sheet.Count ? FormattableString.Invariant($"--start: read {start}, but a sheet {sheet.Name} has {sheet.Count} labels")
            : !call.Value(_batch) && _specification.AreGiven(call) ? "--spec, --low and --high need --batch"
            : _specification.Conflict(call);
}

/// <summary>A label as a person reads it.</summary>
internal static class LabelText
{
    public static void Write(CallOutput terminal, Label label)
    {
        foreach (var line in LabelOrder.Words(label).TrimEnd('\n').Split('\n'))
        {
            terminal.Line(line);
        }
    }
}

/// <summary>An option that takes a sheet of labels.</summary>
internal static class SheetOption
{
    public static Option<LabelSheet?> Create()
    {
        var option = new Option<LabelSheet?>("--sheet")
        {
            HelpName = "SHEET",
            Description = $"The sheet of labels: {string.Join(", ", LabelSheet.All.Select(s => $"{s.Name} ({s.Size})"))}; default: "
                + $"{LabelSheet.All[0].Name}.",
            CustomParser = result =>
            {
                if (LabelSheet.Find(result.Tokens[0].Value) is { } sheet)
                {
                    return sheet;
                }

                result.AddError($"--sheet: read '{result.Tokens[0].Value}', expected one of "
                    + $"{string.Join(", ", LabelSheet.All.Select(s => s.Name))}");
                return null;
            },
        };
        option.CompletionSources.Add([.. LabelSheet.All.Select(s => s.Name)]);
        return option;
    }
}
