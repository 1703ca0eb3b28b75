using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Reports;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A run on paper.</summary>
internal sealed class ReportCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- report sample-runs/lantern-gel-06.csv --out my-report.html";

    private readonly Argument<string> _run = RunSource.Argument();
    private readonly TargetOptions _target = new();
    private readonly Option<string[]> _history = RunSource.History();
    private readonly Option<bool> _certificate = FlagOption.Create("--certificate", "A batch certificate in place of the report: checked "
        + "against --spec, --low and --high, the run's product or its target. Ends with 3 if the verdict does not allow one.");
    private readonly SpecificationOptions _specification = new();
    private readonly PaperOptions _paper = new();

    public ReportCommand()
        : base("report", "Report a run: the body and its uncertainty, the curve, every row, corrections and voids, to print and "
            + "to sign.", Example)
        => Take([_run, .. _target.All, _history, _certificate, .. _specification.All, .. _paper.All]);

    protected override ExitCode Run(Invocation call)
    {
        if (Conflict(call) is { } conflict)
        {
            return call.Wrong(conflict);
        }

        if (RunSource.Read(call.Value(_run), call.Value(_history), call, out var code, _target) is not { File: var file } named)
        {
            return code;
        }

        call.Warn(named.Warnings);
        if (call.Value(_certificate))
        {
            return Certify(named, call);
        }

        var asked = new StudyRequest(file.Run) { Band = _target.Band(file, call), History = named.Earlier };
        return _paper.Give(RunReport.Of(file, named.Rows, asked, call.Today), call);
    }

    private ExitCode Certify(NamedRun named, Invocation call)
    {
        if (_specification.Find(ref named, call, out var code) is not { } wanted)
        {
            return code;
        }

        var outcome = BatchChecks.Of(named.Bench.Request(named.File.Run, wanted, named.Earlier, call.Today));
        if (outcome is not CheckOutcome.Checked { Check: var check })
        {
            return call.Refuse($"{named.Name}: {CheckRemarks.Of(((CheckOutcome.Refused)outcome).Reason)}");
        }

        var study = Study.Of(new(check.Run) { Band = check.Body?.Band, History = named.Earlier }) as StudyOutcome.Made;
        var given = _paper.Give(
            BatchCertificate.Of(named.File with { Run = check.Run }, named.Rows, check, study?.Study, call.Today), call);
        return given == ExitCode.Done && check.Verdict is not Verdict.Accept ? ExitCode.Rejected : given;
    }

    private string? Conflict(Invocation call)
        => !call.Value(_certificate) ? _specification.AreGiven(call) ? "--spec, --low and --high need --certificate" : null
            : _target.AreGiven(call)
                ? "a certificate needs a specification: give --spec, or --low and --high, not --target or --tolerance"
            : _specification.Conflict(call);
}
