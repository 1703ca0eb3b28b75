using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Reports;

namespace Viscolog.Cli.Commands;

/// <summary>A run on paper.</summary>
internal sealed class ReportCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- report sample-runs/lantern-gel-06.csv --out my-report.html";

    private readonly Argument<string> run = RunSource.Argument();
    private readonly TargetOptions target = new();
    private readonly Option<bool> certificate = new("--certificate") { Description = "A batch certificate in place of the report: checked against --spec, --low and --high, the run's product or its target." };
    private readonly SpecificationOptions specification = new();
    private readonly PaperOptions paper = new();

    public ReportCommand()
        : base("report", "Report a run: the body and its uncertainty, the curve, every row, corrections and voids, to print and to sign.", Example)
        => Take([run, .. target.All, certificate, .. specification.All, .. paper.All]);

    protected override ExitCode Run(Invocation call)
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
        return paper.Give(RunReport.Of(file, named.Rows, asked, call.Today), call);
    }

    private ExitCode Certify(NamedRun named, Invocation call)
    {
        if (specification.Find(ref named, call, out var code) is not { } wanted)
        {
            return code;
        }

        var outcome = BatchChecks.Of(named.Bench.Request(named.File.Run, wanted, named.Earlier, call.Today));
        if (outcome is not CheckOutcome.Checked { Check: var check })
        {
            return call.Refuse($"{named.Name}: {((CheckOutcome.Refused)outcome).Reason}");
        }

        var study = Study.Of(new(check.Run) { Band = check.Body?.Band, History = named.Earlier }) as StudyOutcome.Made;
        return paper.Give(BatchCertificate.Of(named.File with { Run = check.Run }, named.Rows, check, study?.Study, call.Today), call);
    }

    private string? Conflict(Invocation call)
        => !call.Value(certificate) ? specification.AreGiven(call) ? "--spec, --low and --high go with --certificate" : null
            : target.AreGiven(call) ? "a certificate goes by a specification: give --spec, or --low and --high, not --target or --tolerance"
            : specification.Conflict(call);
}
