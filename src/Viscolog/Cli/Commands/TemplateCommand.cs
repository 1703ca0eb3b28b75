using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.Cli.Commands;

/// <summary>An empty run for a spreadsheet.</summary>
internal sealed class TemplateCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- template -o my-run.xlsx";

    private readonly OutputOptions _output = new("The workbook to write (.xlsx); default: run.xlsx.", "file");

    public TemplateCommand()
        : base("template", "Write a workbook for a spreadsheet: an empty run to fill in, and what its columns mean.", Example)
        => Take(_output.All);

    protected override ExitCode Run(Invocation call)
    {
        var path = call.Value(_output.File) ?? "run.xlsx";
        return path.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase)
            ? call.Written(
                NamedFile.Write(path, call.Value(_output.Force), () => TableSheet.Workbook(RunSheet.Template()).Made!),
                written => new ExportAnswer([written]))
            : call.Wrong("give a file that ends with .xlsx");
    }
}
