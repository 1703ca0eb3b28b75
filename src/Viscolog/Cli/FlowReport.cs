using System.Collections.Immutable;
using Viscolog.Cli.Json;
using Viscolog.Core.Flow;
using Viscolog.FlowFiles;

namespace Viscolog.Cli;

/// <summary>What <c>flow</c> answers.</summary>
internal sealed record FlowReport(FlowFile File, FlowCurve Curve, ImmutableArray<RateViscosity> At)
{
    public IReadOnlyList<string> Warnings => [.. File.Warnings, .. Curve.Warnings];

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
        ThinningIndex = Curve.Index is { } index ? new(Rounded.Four(index.Value), Rounded.Four(index.From.PerSecond), index.IsOutside) : null,
        Loop = Curve.Loop is { } loop ? new(Rounded.Four(loop.Area), Rounded.Four(100 * loop.Part)) : null,
        Source = File.Source,
        File = picture,
        Warnings = Warnings,
    };

    private static double Pascals(double milliPascalSeconds) => Rounded.Four(milliPascalSeconds / 1000);

    private static FlowFitAnswer Fit(FlowFit fit) => new(
        fit.Model.Name,
        fit.Parameters.ToDictionary(p => p.Name, p => new FlowParameterAnswer(Rounded.Six(p.Value), p.StandardError is { } se ? Rounded.Six(se) : null, p.UpperLimit is { } limit ? Rounded.Six(limit) : null), StringComparer.Ordinal),
        fit.ResidualSumOfSquares is { } rss ? Rounded.Six(rss) : null,
        fit.Aicc is { } aicc ? Math.Round(aicc, 3) : null,
        Math.Round(fit.Weight, 4),
        fit.Trouble);
}
