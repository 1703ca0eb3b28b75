using System.CommandLine;
using Viscolog.Cli.Json;
using Viscolog.Reports;

namespace Viscolog.Cli.Calls;

/// <summary>Where a document goes: to a file, or as plain text to standard output.</summary>
internal sealed class PaperOptions
{
    private readonly OutputOptions _file = new(
        "Where to write: .html, .txt, or .xlsx with each table as a sheet; without it plain text is printed.", "file");

    public Option[] All => _file.All;

    /// <summary>Whether a file is named.</summary>
    public bool NamesFile(Invocation call) => call.Value(_file.File) is not null;

    /// <summary>Writes or prints a document.</summary>
    public ExitCode Give(Paper paper, Invocation call)
    {
        if (_file.Write(call, (path, force) => PaperFile.Write(paper, path, force)) is { } written)
        {
            return call.Written(written, path => new PaperAnswer(path));
        }

        if (call.Json)
        {
            call.Print(new TextAnswer(TextPaper.Write(paper)));
            return ExitCode.Done;
        }

        foreach (var line in TextPaper.Write(paper).TrimEnd('\n').Split('\n'))
        {
            call.Terminal.Line(line);
        }

        return ExitCode.Done;
    }
}
