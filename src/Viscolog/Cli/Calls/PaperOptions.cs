using System.CommandLine;
using Viscolog.Cli.Json;
using Viscolog.Output;
using Viscolog.Reports;

namespace Viscolog.Cli.Calls;

/// <summary>Where a document goes: to a file, or as plain text to standard output.</summary>
internal sealed class PaperOptions
{
    private readonly Option<string?> file = new("--out", "--output", "-o") { HelpName = "FILE", Description = "Where to write: .html or .txt; without it plain text is printed." };
    private readonly Option<bool> force = new("--force") { Description = "Overwrite an existing file." };

    public void AddTo(Command command)
    {
        command.Add(file);
        command.Add(force);
    }

    /// <summary>Whether a file is named.</summary>
    public bool NamesFile(Invocation call) => call.Value(file) is not null;

    /// <summary>Writes or prints a document.</summary>
    /// <param name="paper">The document.</param>
    /// <param name="call">The call.</param>
    public ExitCode Give(Paper paper, Invocation call)
    {
        if (call.Value(file) is not { } path)
        {
            foreach (var line in TextPaper.Write(paper).TrimEnd('\n').Split('\n'))
            {
                call.Terminal.Line(line);
            }

            return ExitCode.Done;
        }

        switch (PaperFile.Write(paper, path, call.Value(force)))
        {
            case FileOutcome.Refused refused:
                return call.Refuse(refused.Reason);
            case FileOutcome.Written written when call.Json:
                call.Print(new PaperAnswer(written.Path));
                return ExitCode.Done;
            case FileOutcome.Written written:
                call.Terminal.Line($"written: {written.Path}");
                return ExitCode.Done;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    /// <summary>Today, by the call's clock, where the bench stands.</summary>
    public static DateOnly Today(Invocation call) => DateOnly.FromDateTime(call.Clock.GetLocalNow().Date);
}
