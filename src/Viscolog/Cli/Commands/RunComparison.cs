using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>Which thickener, or pair, reaches a target in a base at the least dose, cost and water: <c>runs --compare</c>.</summary>
internal sealed class RunComparison
{
    private readonly Option<bool> _compare = FlagOption.Create(
        "--compare", "Compare the thickeners of these runs: dose, cost and water for a target, with intervals.");
    private readonly Option<double?> _target = NumberOption.Create(
        "--target", "MPAS", "With --compare: the body wanted; default: the latest run's.", NumberRange.Viscosity);
    private readonly Option<string?> _strings = TextOption.Create(
        "--string", "LOW-HIGH", "With --compare: the string wanted in mm; default: that of the latest run that has one.");

    public Option[] All => [_compare, _target, _strings];

    public bool IsAsked(Invocation call) => call.Value(_compare);

    public ExitCode Answer(Invocation call, BenchLog log, IEnumerable<RunSummary> summaries)
    {
        LoggedRun[] logged = [.. summaries.OrderBy(s => s.Number).Select(s => log.Run(s.Number)).OfType<LoggedRun>()];
        Run[] runs = [.. logged.Select(r => r.File.Run)];
        string?[] bases = [.. runs.Select(r => r.Base.Name).Distinct(StringComparer.Ordinal)];
        if (bases is not [{ } name])
        {
            return call.Refuse(runs.Length == 0 ? "no run matches" : "thickeners are compared in one base; name it with --base");
        }

        var band = call.Value(_target) is { } wanted
            ? ViscosityBand.Around(Viscosity.FromMilliPascalSeconds(wanted), Target.DefaultTolerance)
            : runs.LastOrDefault(r => r.Target is not null)?.Target?.Band;
        if (band is null)
        {
            return call.Refuse("none of these runs has a target; give --target");
        }

        StringBand? ends = runs.LastOrDefault(r => r.TargetString is not null)?.TargetString;
        if (call.Value(_strings) is { } text)
        {
            ends = Ends(text);
            if (ends is null)
            {
                return call.Refuse($"--string: read '{text}', expected two rising lengths in mm such as 30-47");
            }
        }

        var (contenders, aside) = ThickenerComparison.Of(runs, band, ends);
        return call.Answer(
            () => CompareAnswer.Of(name, band, ends, contenders, aside), terminal => Write(terminal, name, band, ends, contenders), aside);
    }

    private static void Write(CallOutput terminal, string name, ViscosityBand band, StringBand? ends, IReadOnlyList<Contender> contenders)
    {
        terminal.Line(ComparisonWords.Head(name, band, ends));
        terminal.Line();
        terminal.Table(ComparisonWords.Table(contenders));
        terminal.Line();
        foreach (var line in ComparisonWords.Least(contenders))
        {
            terminal.Line(line);
        }
    }

    private static StringBand? Ends(string text)
    {
        double[] ends = [.. text.Split('-')
            .Select(t => double.TryParse(t, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var v) && v is >= 0 and <= 1e6
                ? v
                : double.NaN)];
        return ends is [var low, var high] && low < high ? new(Length.FromMillimeters(low), Length.FromMillimeters(high)) : null;
    }
}
