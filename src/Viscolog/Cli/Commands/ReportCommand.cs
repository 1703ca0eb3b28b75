using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Reports;

namespace Viscolog.Cli.Commands;

/// <summary>A run on paper.</summary>
internal sealed class ReportCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- report sample-runs/lantern-gel-06.csv --out my-report.html";

    private readonly Argument<string> run = new("RUN") { Description = RunSource.Description };
    private readonly TargetOptions target = new();
    private readonly Option<bool> certificate = new("--certificate") { Description = "A batch certificate in place of the report: checked against --spec, --low and --high, the run's product or its target." };
    private readonly SpecificationOptions specification = new();
    private readonly PaperOptions paper = new();

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("report", "Report a run: the body and its uncertainty, the curve, every row, corrections and voids, to print and to sign.");
        command.Add(run);
        target.AddTo(command);
        command.Add(certificate);
        specification.AddTo(command);
        paper.AddTo(command);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        if (Conflict(call) is { } conflict)
        {
            return call.Wrong(conflict);
        }

        if (RunSource.Read(call.Value(run), null, call, out var code) is not { File: var file } named)
        {
            return code;
        }

        call.Warn(named.Warnings);
        if (call.Value(certificate))
        {
            return Certify(named, call);
        }

        var asked = new StudyRequest(file.Run) { Band = target.Band(file, call), History = named.Earlier };
        return paper.Give(RunReport.Of(file, named.Rows, asked, PaperOptions.Today(call)), call);
    }

    private ExitCode Certify(NamedRun named, Invocation call)
    {
        if (specification.Find(ref named, call, out var code) is not { } wanted)
        {
            return code;
        }

        var today = PaperOptions.Today(call);
        switch (BatchChecks.Of(named.Bench.Request(named.File.Run, wanted, named.Earlier, today)))
        {
            case CheckOutcome.Refused refused:
                return call.Refuse($"{named.Name}: {refused.Reason}");
            case CheckOutcome.Checked { Check: var check }:
                var study = Study.Of(new(check.Run) { Band = check.Body?.Band, History = named.Earlier }) as StudyOutcome.Made;
                return paper.Give(BatchCertificate.Of(named.File with { Run = check.Run }, named.Rows, check, study?.Study, today), call);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private string? Conflict(Invocation call)
        => !call.Value(certificate) ? specification.AreGiven(call) ? "--spec, --low and --high go with --certificate" : null
            : target.AreGiven(call) ? "a certificate goes by a specification: give --spec, or --low and --high, not --target or --tolerance"
            : specification.Conflict(call);
}
