using System.Collections.Immutable;
using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.FlowFiles;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Tables;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A flow curve: laws, viscosities at rates, a picture.</summary>
internal sealed class FlowCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- flow sample-runs/flow/lantern-gel-sweep.csv";

    private readonly Argument<string> _file = new("FILE")
    {
        Description = "A CSV file with shear rates and stresses or viscosities, or with speeds and torques.",
    };
    private readonly Option<string> _weights = new("--weights")
    {
        HelpName = "KIND",
        Description = "relative (default): each point counts by 1/stress; none: all alike in Pa.",
        DefaultValueFactory = _ => "relative",
    };
    private readonly Option<double[]> _at = NumberOption.CreateRepeatable(
        "--at", "RATE", "Ask for the viscosity at a shear rate, in 1/s; may be given more than once.", new("1/s", 1e-9, 1e9));
    private readonly OutputOptions _output = new("Write a picture as well: .svg, .pdf or .png.", "picture");

    public FlowCommand()
        : base("flow", "Fit laws of flow to a curve of stress over shear rate.", Example)
    {
        Take([_file, _weights, _at, .. _output.All]);
        _weights.AcceptOnlyFromAmong("relative", "none");
    }

    protected override ExitCode Run(Invocation call)
    {
        switch (FlowFileReader.Read(call.Value(_file)))
        {
            case TableOutcome<FlowFile>.Refused refused:
                return call.Refuse(refused.Refusal);
            case TableOutcome<FlowFile>.Read { File: var read }:
                return Answer(call, read);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private ExitCode Answer(Invocation call, FlowFile read)
    {
        var weights = call.Value(_weights) == "none" ? FlowWeights.None : FlowWeights.Relative;
        var curve = read.Series is { } series ? FlowCurve.Of(series, weights) : FlowCurve.Of(read.Points, weights);
        var picture = FlowPicture.Of(read.Name, curve);
        var asked = call.Value(_at) is { Length: > 0 } rates
            ? rates.Select(r => new NamedRate(null, ShearRate.FromPerSecond(r)))
            : NamedRate.Usual;
        var report = new FlowReport(read, curve, [.. asked.Select(curve.At).OfType<RateViscosity>()]);
        var written = _output.Write(call, (path, force) => PictureFile.Write(FlowPlot.Of(picture), path, force));
        return written is { Reason: { } reason }
            ? call.Refuse(reason)
            : call.Answer(
                () => report.ToAnswer(written?.Made), terminal => FlowText.Write(terminal, report, picture, written?.Made),
                report.Warnings);
    }
}

/// <summary>What <c>flow</c> answers.</summary>
internal sealed record FlowReport(FlowFile File, FlowCurve Curve, ImmutableArray<RateViscosity> At)
{
    public IReadOnlyList<string> Warnings => [.. File.Warnings, .. Curve.Warnings.Select(FlowWords.Of)];

    public FlowAnswer ToAnswer(string? picture) => new()
    {
        Name = File.Name,
        Weights = Curve.Weights == FlowWeights.Relative ? "relative" : "none",
        Points = Curve.Fitted.Length,
        Fits = [.. Curve.Fits.Select(Fit)],
        At = [.. At.Select(a => new FlowAtAnswer(
            a.At.Name,
            a.At.Rate.PerSecond,
            Pascals(a.Value.Median.MilliPascalSeconds),
            Pascals(a.Value.Low.MilliPascalSeconds),
            Pascals(a.Value.High.MilliPascalSeconds),
            a.IsOutside))],
        ThinningIndex = Curve.Index is { } index
            ? new(Rounded.Four(index.Value), Rounded.Four(index.From.PerSecond), index.IsOutside)
            : null,
        Loop = Curve.Loop is { } loop ? new(Rounded.Four(loop.Area), Rounded.Four(100 * loop.Part)) : null,
        Source = File.Source,
        File = picture,
        Warnings = Warnings,
    };

    private static double Pascals(double milliPascalSeconds) => Rounded.Four(milliPascalSeconds / 1000);

    private static FlowFitAnswer Fit(FlowFit fit) => new(
        fit.Model.Name,
        fit.Parameters.ToDictionary(
            p => p.Name,
            p => new FlowParameterAnswer(
                Rounded.Six(p.Value), p.StandardError is { } se ? Rounded.Six(se) : null,
                p.UpperLimit is { } limit ? Rounded.Six(limit) : null),
            StringComparer.Ordinal),
        fit.ResidualSumOfSquares is { } rss ? Rounded.Six(rss) : null,
        fit.Aicc is { } aicc ? Math.Round(aicc, 3) : null,
        Math.Round(fit.Weight, 4),
        fit.Trouble is { } trouble ? FlowWords.Of(trouble) : null);
}
