using System.CommandLine;
using Viscolog.Reports;

namespace Viscolog.Cli;

/// <summary>A run on paper.</summary>
internal sealed class ReportCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- report sample-runs/lantern-gel-06.csv --out my-report.html";

    private readonly Argument<string> run = new("RUN") { Description = RunSource.Description };
    private readonly TargetOptions target = new();
    private readonly PaperOptions paper = new();

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("report", "Report a run: the body and its uncertainty, the curve, every row, corrections and voids, to print and to sign.");
        command.Add(run);
        target.AddTo(command);
        paper.AddTo(command);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(run), null, call, out var code) is not { File: var file } named)
        {
            return code;
        }

        call.Warn(named.Warnings);
        var study = RunStudy.Of(file.Run, target.Band(file, call), named.Earlier);
        return paper.Give(RunReport.Of(file, named.Rows, study, PaperOptions.Today(call)), call);
    }
}
