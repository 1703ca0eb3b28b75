using System.Text;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Output;
using Viscolog.PracticeFiles;
using Viscolog.Store;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Practice;

/// <summary>A class's scores as a CSV file.</summary>
internal sealed class PracticeScoresCommand : CalledCommand
{
    public const string Example = PracticePlayCommand.Example
        + " --player Player-A --log my-log && dotnet run --project src/Viscolog -- practice scores --log my-log";

    private readonly OutputOptions _output = new("Where to write; without it to standard output.", "file");

    public PracticeScoresCommand()
        : base("scores", "The class's score sheet as CSV for spreadsheets: doses, waits, over, grams wasted, for each player "
            + "and game.", Example)
        => Take([.. _output.All]);

    protected override ExitCode Run(Invocation call)
    {
        var (results, warnings) = PracticeScores.Beside(call.Log).All();
        if (call.Json)
        {
            call.Print(new PracticeScoresAnswer(results, warnings));
            return ExitCode.Done;
        }

        call.Warn(warnings);
        if (results.IsEmpty)
        {
            call.Note(Say("no game has been kept yet"));
        }

        using var stream = new MemoryStream();
        PracticeSheet.Write(results, stream);
        if (call.Value(_output.File) is not { } path)
        {
            call.Terminal.Text(Encoding.UTF8.GetString(stream.ToArray()));
            return ExitCode.Done;
        }

        if (NamedFile.Kept(path) is { } kept)
        {
            return call.Refuse(kept.Reason);
        }

        try
        {
            if (!WholeFile.Write(Path.GetFullPath(path), stream.ToArray(), call.Value(_output.Force)))
            {
                return call.Refuse($"{path}: already exists; choose another name, or overwrite it with --force");
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return call.Refuse(TerminalText.Of($"{path}: cannot be written: {e.Message}"));
        }

        var games = Count.Of(results.Length, Say("game"), Say("games"));
        call.Terminal.Line(Say($"written: {Path.GetFullPath(path)}, {games}"));
        return ExitCode.Done;
    }
}
