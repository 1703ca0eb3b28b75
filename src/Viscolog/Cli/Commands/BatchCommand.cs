using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Batches;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Reports;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A run taken to another size: the batch sheet.</summary>
internal sealed class BatchCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- batch sample-runs/lantern-gel-06.csv --to 5kg --out my-batch.html";

    private readonly Argument<string> _run = RunSource.Argument();
    private readonly Option<BatchSize> _to = SizeOption.Create(
        "--to", "Size of the whole batch with its unit: \"5 kg\", \"750 g\", \"10 L\", \"500 mL\".");
    private readonly TargetOptions _target = new();
    private readonly Option<string[]> _history = RunSource.History();
    private readonly Option<double?> _density = NumberOption.Create(
        "--density", "G_ML", "The base's density in g/mL, in place of the run's own.", new("g/mL", 0.001, 1000));
    private readonly Option<double?> _step = NumberOption.Create(
        "--scale-step",
        "G",
        "Step of the scale that thickener is weighed on; default: the step that the batch needs.",
        new("g", 0.0001, 1000));
    private readonly Option<double?> _colour = NumberOption.Create(
        "--colour-yield", "N", "Volumes of paint that one volume of colour concentrate makes; 8 to 16 is usual.", new("", 1, 10_000));
    private readonly PaperOptions _paper = new();

    public BatchCommand()
        : base("batch", "Make a batch sheet from a run: what to weigh, what to add in which steps, what to read, to print and "
            + "to sign.", Example)
    {
        _colour.Aliases.Add("--color-yield");
        Take([_run, _to, .. _target.All, _history, _density, _step, _colour, .. _paper.All]);
    }

    protected override ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(_run), call.Value(_history), call, out var code, _target) is not { File: var file } named)
        {
            return code;
        }

        var whole = call.Value(_density) is { } known
            ? file.Run with { Base = file.Run.Base with { Density = Density.FromGramsPerMilliliter(known) } }
            : file.Run;
        var request = new BatchPlanRequest(whole, call.Value(_to)!)
        {
            Band = _target.Band(file, call),
            History = named.Earlier,
            ScaleStep = call.Value(_step) is { } grams ? Mass.FromGrams(grams) : null,
        };
        var outcome = BatchPlans.Of(request);
        if (outcome is not BatchOutcome.Planned { Plan: var plan })
        {
            return call.Refuse($"{named.Name}: {BatchWords.Of(((BatchOutcome.Refused)outcome).Reason)}");
        }

        if (call.Json && !_paper.NamesFile(call))
        {
            call.Print(BatchAnswer.Of(plan, named.Warnings));
            return ExitCode.Done;
        }

        call.Warn(named.Warnings);
        return _paper.Give(BatchSheet.Of(plan, call.Value(_colour) is { } volumes ? new ColourYield(volumes) : null, call.Today), call);
    }
}
