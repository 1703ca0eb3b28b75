using System.Collections.Immutable;
using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Core.Advising;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A picture of one run or several.</summary>
internal sealed class PlotCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- plot sample-runs/lantern-gel-07.csv -o lantern.svg";

    private const string Map = "map";

    private readonly Argument<string[]> _runs = new("RUN")
    {
        Description = "A run file or the number of a logged run, or several to overlay.",
        Arity = ArgumentArity.OneOrMore,
    };
    private readonly TargetOptions _target = new();
    private readonly Option<string[]> _history = RunSource.History();
    private readonly Option<string> _output = OutputOptions.Named<string>("FILE", "Where to write: .svg, .pdf or .png.");
    private readonly Option<string> _kind = new("--kind")
    {
        HelpName = "KIND",
        Description = "dose (default), settling, residuals or string; of two thickeners dose or map.",
        DefaultValueFactory = _ => "dose",
    };
    private readonly Option<bool> _force = FlagOption.Create("--force", "Overwrite an existing file.");

    public PlotCommand()
        : base("plot", "Draw one run, or several overlaid, into an SVG, PDF or PNG file.", Example)
    {
        _output.Required = true;
        Take([_runs, _output, _kind, _force, .. _target.All, _history]);
        _kind.AcceptOnlyFromAmong("dose", "settling", "residuals", "string", Map);
    }

    protected override ExitCode Run(Invocation call)
    {
        var pictures = ImmutableArray.CreateBuilder<RunPicture>();
        Core.Pots.Run? first = null;
        foreach (var path in call.Value(_runs))
        {
            if (RunSource.Read(path, call.Value(_history), call, out var code, _target) is not { File: var file } named)
            {
                return code;
            }

            call.Warn(named.Warnings);
            first ??= file.Run;
            if (!Core.Pots.ShearConditions.Agree(first, file.Run))
            {
                call.Warn([$"{path}: read by another method or speed than the first run; its curve is drawn with the others but can't be "
                    + $"compared with them"]);
            }

            switch (Study.Of(new(file.Run) { Band = _target.Band(file, call), History = named.Earlier }))
            {
                case StudyOutcome.Refused refused:
                    return call.Refuse($"{path}: {EvidenceWords.Of(refused.Reason)}");
                case StudyOutcome.Made { Study.IsRead: false }:
                    return call.Refuse($"{path}: no reading to draw; log at least the base as it stands");
                case StudyOutcome.Made { Study: var study }:
                    pictures.Add(study.Picture);
                    break;
            }
        }

        var (drawn, asked) = (pictures.ToImmutable(), Enum.Parse<PlotKind>(call.Value(_kind)!, ignoreCase: true));
        return RunPlots.Kinds(drawn).Contains(asked)
            ? call.Written(
                PictureFile.Write(RunPlots.Of(drawn, asked), call.Value(_output)!, call.Value(_force)), path => new Json.PlotAnswer(path))
            : call.Refuse(Conflict(drawn, call.Value(_runs)));
    }

    private static string Conflict(ImmutableArray<RunPicture> drawn, string[] paths)
    {
        var ofTwo = drawn.IndexOf(drawn.FirstOrDefault(d => d.Plane is not null)!);
        return ofTwo < 0 ? $"{paths[0]}: body and string together need two thickeners in the run's header, no more and no fewer"
            : drawn.Length > 1 ? $"{paths[ofTwo]}: a run with two thickeners has its own kind of picture; draw it without the others"
            : $"{paths[0]}: a run with two thickeners is drawn with --kind dose or --kind {Map}";
    }
}
