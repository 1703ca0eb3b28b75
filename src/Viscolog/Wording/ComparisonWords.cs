using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>Thickeners compared, in words and as a table.</summary>
internal static class ComparisonWords
{
    /// <summary>Thickeners compared for the runs' own target, as lines of so many columns; or why they can't be compared.</summary>
    public static Func<int, IEnumerable<string>> Of(IReadOnlyList<Run> runs)
    {
        if (runs.Select(r => r.Base.Name).Distinct(StringComparer.Ordinal).ToList() is not [{ } name])
        {
            return _ => [Say("thickeners are compared in one base; mark runs of one")];
        }

        if (runs.LastOrDefault(r => r.Target is not null)?.Target?.Band is not { } band)
        {
            return _ => [Say("none of these runs has a target")];
        }

        var ends = runs.LastOrDefault(r => r.TargetString is not null)?.TargetString;
        var (contenders, aside) = ThickenerComparison.Of(runs, band, ends);
        return width =>
        [
            .. Paragraph.Of(Head(name, band, ends), width),
            "",
            .. Table(contenders).Lines(width),
            "",
            .. Least(contenders).Concat(aside).SelectMany(l => Paragraph.Of(l, width)),
        ];
    }

    /// <summary>What is compared, and for what.</summary>
    public static string Head(string @base, ViscosityBand band, StringBand? ends) => ends is null
        ? Say($"base {@base}, target {Shown.Stated(band.Aim)}; medians, 9 times in 10 between the values in brackets")
        : Say($"base {@base}, target {Shown.Stated(band.Aim)}, for pairs string {ends.Low.Millimeters:0.##} to "
            + $"{ends.High.Millimeters:0.##} mm as well; medians, 9 times in 10 between the values in brackets");

    /// <summary>A row for each.</summary>
    public static TextTable Table(IEnumerable<Contender> contenders)
    {
        var table = new TextTable(
            Say("thickener"), Say("runs", "head"), Say("dose %"), Say("cost / kg base"), Say("water %"), Say("reached", "head"));
        foreach (var one in contenders)
        {
            table.Add(
                one.Name,
                one.Runs.ToString(Numbers),
                Words(one.Dose, Say($"not within {Posterior.SoughtUpTo} × range")),
                Words(one.Cost, Say("no price")),
                Words(one.Water, Say("no active_pct")),
                Shown.Chance(one.ChanceReached));
        }

        return table;
    }

    /// <summary>Which needs least, a line each.</summary>
    public static IEnumerable<string> Least(IReadOnlyList<Contender> contenders)
    {
        (string, Func<Contender, Spread?>)[] asked =
            [(Say("least dose"), c => c.Dose), (Say("least cost"), c => c.Cost), (Say("least water"), c => c.Water)];
        foreach (var (what, of) in asked)
        {
            if (Least(contenders, of) is { } line)
            {
                yield return $"{what}: {line}";
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
        return ranked[0].Name + (ranked.Length == 1 ? Say(" (nothing to compare it with)") : open.Length == 0 ? ""
            : Say($", though the intervals don't separate it from {string.Join(Say(" and "), open)}"));
    }

    private static string Words(Spread? spread, string none)
        => spread is null ? none
            : spread.High is { } high ? Say($"{Shown.Number(spread.Median)} ({Shown.Number(spread.Low)} to {Shown.Number(high)})")
            : Say($"{Shown.Number(spread.Median)} ({Shown.Number(spread.Low)} to beyond)");
}
