using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Cli.Json;

/// <summary>Advice as <c>viscolog.advice/1</c>.</summary>
internal sealed record AdviceAnswer() : Answer("viscolog.advice/1")
{
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
        var several = advice.Quantities.Length > 1;
        var other = advice.Thickeners.Skip(1).FirstOrDefault();
        var common = new AdviceAnswer
        {
            Run = run,
            Action = Name(advice.Action),
            Thickener = advice.Thickener.Name,
            DoseNowPct = Rounded.Four(advice.Thickener.DoseNow.Percent),
            ShareNowPct = Rounded.Four(advice.Thickener.ShareNow.Percent),
            NowMpas = advice.Body.Now is { } now ? BodyAnswer.Of(now) : null,
            ExpectedMpas = advice.Body.Expected is { } body ? BodyAnswer.Of(body) : null,
            ChanceInBandPct = Math.Round(advice.Body.ChanceInBand.Percent, 2),
            ChanceOverPct = Math.Round(advice.Body.ChanceOver.Percent, 2),
            ChanceOverWords = ReasonWords.OneIn(advice.Body.ChanceOver),
            WhatIf = advice.WhatIf is { } asked ? WhatIfAnswer.Of(asked) : null,
            ExpectedStringMm = advice.StringLength?.Expected is { } expected ? LengthAnswer.Of(expected) : null,
            NowStringMm = advice.StringLength?.Now is { } length ? LengthAnswer.Of(length) : null,
            ChanceBothPct = several ? Math.Round(advice.ChanceAllInBand.Percent, 2) : null,
            ChanceOverStringPct = advice.StringLength is { } over ? Math.Round(over.ChanceOver.Percent, 2) : null,
            OtherThickener = other?.Name,
            OtherDoseNowPct = other is not null ? Rounded.Four(other.DoseNow.Percent) : null,
            Plan = several ? [.. advice.Thickeners.Where(t => t.Planned is not null).Select(PlannedAnswer.Of)] : null,
            DoseLimit = new(Rounded.Four(advice.Thickener.Limit.Dose.Percent), LimitWords.Of(advice.Thickener.Limit)),
            Why = ReasonWords.Of(advice),
            Warnings = [.. fileWarnings, .. advice.Warnings.Select(ReasonWords.Of)],
            Cautions = [.. advice.Cautions.Select(CautionWords.Of)],
        };
        return advice.Action switch
        {
            BenchAction.Add add => common with
            {
                AddG = add.Poured.Grams,
                AddPct = Rounded.Four(add.Increment.Percent),
                DoseAfterPct = Rounded.Four(add.After.Percent),
                WaitS = add.Standing.TotalSeconds,
            },
            BenchAction.LetDown letDown => common with
            {
                LetDownG = Math.Round(letDown.Base.Grams, 2),
                DoseAfterPct = Rounded.Four(letDown.After.Percent),
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

/// <summary>An estimate of a body in mPa·s.</summary>
internal sealed record BodyAnswer(double Median, double Low, double High, double LevelPct)
{
    public static BodyAnswer Of(Estimate estimate) => new(
        Rounded.Four(estimate.Median.MilliPascalSeconds),
        Rounded.Four(estimate.Low.MilliPascalSeconds),
        Rounded.Four(estimate.High.MilliPascalSeconds),
        estimate.Level.Percent);
}

/// <summary>An estimate of a length in mm.</summary>
internal sealed record LengthAnswer(double Median, double Low, double High, double LevelPct)
{
    public static LengthAnswer Of(LengthEstimate estimate) => new(
        Rounded.Four(estimate.Median.Millimeters), Rounded.Four(estimate.Low.Millimeters), Rounded.Four(estimate.High.Millimeters),
        estimate.Level.Percent);
}

/// <summary>A dose limit.</summary>
internal sealed record LimitAnswer(double Pct, string Why);

/// <summary>What is still to come of a thickener.</summary>
internal sealed record PlannedAnswer(string Thickener, double AboutPct, int Additions)
{
    /// <summary>Of a thickener for which something is planned.</summary>
    public static PlannedAnswer Of(AdvisedThickener thickener)
        => new(thickener.Name, Math.Round(thickener.Planned!.About.Percent, 2), thickener.Planned.Additions);
}

/// <summary>What an addition asked about would bring.</summary>
internal sealed record WhatIfAnswer
{
    public required double AddG { get; init; }
    public required double AddPct { get; init; }
    public required double DoseAfterPct { get; init; }
    public required BodyAnswer ExpectedMpas { get; init; }
    public required double ChanceInBandPct { get; init; }
    public required double ChanceOverPct { get; init; }
    public required string ChanceOverWords { get; init; }
    public required IReadOnlyList<string> Notes { get; init; }

    public static WhatIfAnswer Of(WhatIf asked) => new()
    {
        AddG = asked.Poured.Grams,
        AddPct = Rounded.Four(asked.Increment.Percent),
        DoseAfterPct = Rounded.Four(asked.After.Percent),
        ExpectedMpas = BodyAnswer.Of(asked.Expected),
        ChanceInBandPct = Math.Round(asked.ChanceInBand.Percent, 2),
        ChanceOverPct = Math.Round(asked.ChanceOver.Percent, 2),
        ChanceOverWords = ReasonWords.OneIn(asked.ChanceOver),
        Notes = [.. ReasonWords.Notes(asked)],
    };
}
