using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>Which thickener, or pair, reaches a target in a base at the least dose, cost and water: <c>runs --compare</c>.</summary>
internal sealed class RunComparison
{
    private readonly Option<bool> _compare = FlagOption.Create(
        "--compare", "Compare the thickeners of these runs: dose, cost and water for a target, with intervals.");
    private readonly Option<double?> _target = NumberOption.Create(
        "--target", "MPAS", "With --compare: the body wanted; default: the latest run's.", 1e-3, 1e12);
    private readonly Option<string?> _strings = TextOption.Create(
        "--string", "LOW-HIGH", "With --compare: the string wanted in mm; default: the latest run's that states one.");

    public Option[] All => [_compare, _target, _strings];

    public bool IsAsked(Invocation call) => call.Value(_compare);

    public ExitCode Answer(Invocation call, BenchLog log, IEnumerable<RunSummary> summaries)
    {
        LoggedRun[] logged = [.. summaries.OrderBy(s => s.Number).Select(s => log.Run(s.Number)).OfType<LoggedRun>()];
        Run[] runs = [.. logged.Select(r => r.File.Run)];
        string?[] bases = [.. runs.Select(r => r.Base.Name).Distinct(StringComparer.Ordinal)];
        if (bases is not [{ } name])
        {
            return call.Refuse(runs.Length == 0 ? "no run is like that" : "thickeners are compared in one base; name it with --base");
        }

        var band = call.Value(_target) is { } wanted
            ? ViscosityBand.Around(Viscosity.FromMilliPascalSeconds(wanted), Target.DefaultTolerance)
            : runs.LastOrDefault(r => r.Target is not null)?.Target?.Band;
        if (band is null)
        {
            return call.Refuse("none of these runs states a target; give --target");
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
        var pairs = ends is null
            ? ""
            : FormattableString.Invariant($", for pairs string {ends.Low.Millimeters:0.##} to {ends.High.Millimeters:0.##} mm as well");
        terminal.Line($"base {name}, target {Shown.Body(band.Aim)}{pairs}; medians, 9 times in 10 within the brackets");
        terminal.Line();
        var table = new TextTable("thickener", "runs", "dose %", "cost / kg base", "water %", "reached");
        foreach (var one in contenders)
        {
            table.Add(
                one.Name,
                one.Runs.ToString(CultureInfo.InvariantCulture),
                Words(one.Dose, FormattableString.Invariant($"not within {Posterior.SoughtUpTo} × range")),
                Words(one.Cost, "no price"),
                Words(one.Water, "no active_pct"),
                Shown.Chance(one.ChanceReached));
        }

        terminal.Table(table);
        terminal.Line();
        foreach (var (
            what,
            of) in new (string, Func<Contender, Spread?>)[] { ("least dose", c => c.Dose), ("least cost", c => c.Cost),
            ("least water", c => c.Water) })
        {
            if (Least(contenders, of) is { } line)
            {
                terminal.Line($"{what}: {line}");
            }
        }
    }

    private static string? Least(IReadOnlyList<Contender> contenders, Func<Contender, Spread?> of)
    {
        var ranked = contenders.Where(c => of(c) is not null).OrderBy(c => of(c)!.Median).ToArray();
        if (ranked.Length == 0)
        {
            return null;
        }

        var open = ranked.Skip(1).Where(c => of(c)!.Low < (of(ranked[0])!.High ?? double.PositiveInfinity)).Select(c => c.Name).ToArray();
        return ranked[0].Name + (ranked.Length == 1 ? " (nothing to compare it with)" : open.Length == 0 ? "" : $", though the intervals "
            + $"don't tell it from {string.Join(" and ", open)}");
    }

    private static string Words(Spread? spread, string none)
        => spread is null ? none : $"{Shown.Number(spread.Median)} ({Shown.Number(spread.Low)} to "
            + $"{(spread.High is { } high ? Shown.Number(high) : "beyond")})";

    private static StringBand? Ends(string text)
    {
        double[] ends = [.. text.Split('-')
            .Select(t => double.TryParse(t, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var v) && v is >= 0 and <= 1e6
                ? v
                : double.NaN)];
        return ends is [var low, var high] && low < high ? new(Length.FromMillimeters(low), Length.FromMillimeters(high)) : null;
    }
}
