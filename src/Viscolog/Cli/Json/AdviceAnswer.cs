using Viscolog.Core.Advising;

namespace Viscolog.Cli.Json;

/// <summary>Advice as <c>viscolog.advice/1</c>.</summary>
internal sealed record AdviceAnswer
{
    public string Schema { get; } = "viscolog.advice/1";

    public string? Run { get; init; }

    public required string Action { get; init; }

    public required string Thickener { get; init; }

    public double? AddG { get; init; }

    public double? AddPct { get; init; }

    public double? LetDownG { get; init; }

    public required double DoseNowPct { get; init; }

    public required double ShareNowPct { get; init; }

    public double? DoseAfterPct { get; init; }

    public double? WaitS { get; init; }

    public BodyAnswer? ExpectedMpas { get; init; }

    public BodyAnswer? NowMpas { get; init; }

    public LengthAnswer? ExpectedStringMm { get; init; }

    public LengthAnswer? NowStringMm { get; init; }

    public double? ChanceBothPct { get; init; }

    public double? ChanceOverStringPct { get; init; }

    public string? OtherThickener { get; init; }

    public double? OtherDoseNowPct { get; init; }

    public IReadOnlyList<PlannedAnswer>? Plan { get; init; }

    public required double ChanceInBandPct { get; init; }

    public required double ChanceOverPct { get; init; }

    public required string ChanceOverWords { get; init; }

    public WhatIfAnswer? WhatIf { get; init; }

    public required LimitAnswer DoseLimit { get; init; }

    public required string Why { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    public static AdviceAnswer Of(string? run, Advice advice, IEnumerable<string> fileWarnings)
    {
        var common = new AdviceAnswer
        {
            Run = run,
            Action = Name(advice.Action),
            Thickener = advice.Thickener,
            DoseNowPct = Rounded.Four(advice.DoseNow.Percent),
            ShareNowPct = Rounded.Four(advice.ShareNow.Percent),
            NowMpas = advice.Now is { } now ? BodyAnswer.Of(now) : null,
            ChanceInBandPct = Math.Round(advice.ChanceInBand.Percent, 2),
            ChanceOverPct = Math.Round(advice.ChanceOver.Percent, 2),
            ChanceOverWords = Explanation.OneIn(advice.ChanceOver),
            WhatIf = advice.WhatIf is { } asked ? WhatIfAnswer.Of(asked) : null,
            ExpectedStringMm = advice.Pair?.Expected is { } expected ? LengthAnswer.Of(expected) : null,
            NowStringMm = advice.Pair?.Now is { } length ? LengthAnswer.Of(length) : null,
            ChanceBothPct = advice.Pair is { } both ? Math.Round(both.ChanceBoth.Percent, 2) : null,
            ChanceOverStringPct = advice.Pair is { } over ? Math.Round(over.ChanceOver.Percent, 2) : null,
            OtherThickener = advice.Pair?.OtherThickener,
            OtherDoseNowPct = advice.Pair is { } other ? Rounded.Four(other.OtherDoseNow.Percent) : null,
            Plan = advice.Pair is { } pair ? [.. pair.Plan.Select(p => new PlannedAnswer(p.Thickener, Math.Round(p.About.Percent, 2), p.Additions))] : null,
            DoseLimit = new(Rounded.Four(advice.Limit.Dose.Percent), advice.Limit.Why),
            Why = advice.Why,
            Warnings = [.. fileWarnings, .. advice.Warnings],
            Cautions = advice.Cautions,
        };
        return advice.Action switch
        {
            BenchAction.Add add => common with
            {
                AddG = add.Poured.Grams,
                AddPct = Rounded.Four(add.Increment.Percent),
                DoseAfterPct = Rounded.Four(add.After.Percent),
                WaitS = add.Standing.TotalSeconds,
                ExpectedMpas = BodyAnswer.Of(add.Expected),
            },
            BenchAction.LetDown letDown => common with
            {
                LetDownG = Math.Round(letDown.Base.Grams, 2),
                DoseAfterPct = Rounded.Four(letDown.After.Percent),
                ExpectedMpas = BodyAnswer.Of(letDown.Expected),
            },
            BenchAction.Wait wait => common with { WaitS = wait.More.TotalSeconds },
            BenchAction.Measure measure => common with { WaitS = measure.Standing?.TotalSeconds },
            _ => common,
        };
    }

    private static string Name(BenchAction action) => action switch
    {
        BenchAction.Add => "add",
        BenchAction.Wait => "wait",
        BenchAction.Stop => "stop",
        BenchAction.LetDown => "let-down",
        BenchAction.GiveUp => "give-up",
        BenchAction.Measure => "measure",
        _ => throw new ArgumentOutOfRangeException(nameof(action), action, "not a case of the closed set"),
    };
}
