using Viscolog.Core.Advising;
using Viscolog.Core.Curves;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>What a report says of a study: where the pot stands, the curve, and how it was found.</summary>
internal static class StudyBlocks
{
    /// <summary>The study that a report can be made of; null where nothing can be said of the run.</summary>
    public static Study? Told(StudyOutcome outcome)
        => outcome is StudyOutcome.Made { Study: { } study } && Trouble(outcome) is null ? study : null;

    /// <summary>Why nothing can be said of the run; null where something can.</summary>
    public static string? Trouble(StudyOutcome outcome) => outcome switch
    {
        StudyOutcome.Refused refused => EvidenceWords.Of(refused.Reason),
        StudyOutcome.Made { Study: { NoAdvice: NoAdvice.NoStringTarget missing } } => AdviceWords.Why(missing),
        StudyOutcome.Made { Study.IsDrawn: false } => Say("no reading of it counts"),
        _ => null,
    };

    /// <summary>Where the pot stands.</summary>
    public static Block.Result Result(Study study)
    {
        var standing = study.Standing;
        if (!standing.IsAllRead)
        {
            return new(
                Say("Not both read"),
                Say("Body and string are both needed to say where the pot stands: read the one that is missing."),
                ResultWeight.Plain);
        }

        var values = string.Join(", ", standing.Quantities.Select(Value));
        var place = string.Join(", ", standing.Thickeners.Select(
            t => Say($"{Shown.Dose(t.Dose)} {t.Name} ({Shown.Share(t.Share)} of total)")));
        var words = Say($"{values} at {RunFacts.Temperature(study.Evidence.Run)} and {place}.");
        if (standing.Chances is not { } chances)
        {
            return new(Shown.Body(Body(standing).Now.Median), words, ResultWeight.Plain);
        }

        var where = Place.Of(chances);
        return new(where.Sign, string.Join(' ', standing.Quantities.Select(Wanted).Prepend(words).Append(where.Words)), where.Weight);
    }

    /// <summary>The curve, or the map of two doses.</summary>
    public static Block.Drawing Drawing(Study study)
    {
        var (thickener, at) = (study.Picture.Thickener, PlotText.Celsius(study.Picture.ReferenceTemperature));
        var words = study switch
        {
            { Picture.Plane: not null } => Say("Body and string over the doses of both thickeners, with what is wanted of each."),
            { Band: null } => Say($"Body over dose of {thickener} at {at}: readings, settled values, the estimated curve with its bands."),
            _ => Say($"Body over dose of {thickener} at {at}: readings, settled values, the estimated curve with its bands, the target "
                + $"band."),
        };
        return new(SvgPicture.Of(PictureFile.Svg(RunPlots.Usual(study.Picture))), words);
    }

    /// <summary>How it was found.</summary>
    /// <param name="stated">The run as its file states it.</param>
    /// <param name="study">What it says.</param>
    public static Block.Points Method(Run stated, Study study)
    {
        var (posterior, now) = (study.Posterior, Body(study.Standing).Now);
        var spread = Math.Log(now.High.MilliPascalSeconds / now.Low.MilliPascalSeconds) / (2 * 1.645);
        return new(
        [
            Say($"Method: {RunFacts.Method(stated)}; repeatability {RunFacts.Repeatability(stated, study.Evidence.Run)}."),
            .. study.Standing.Quantities.Select(q => Fitted(q, study.Evidence.Run)),
            Say($"Uncertainty: {100 * spread:0.0} % of the value (standard uncertainty, "
                + $"from the repeatability, the number of readings, the temperature correction, the build-up still to come and the shapes "
                + $"of curve that fit); the interval given contains the settled body 9 times in 10. The calibration of the instrument is "
                + $"not included."),
            Say($"Decision rule: in band is stated if the chance of it is "
                + $"{100 * IncrementPolicy.StopChance:0} % or more, allowing for reading error; likewise short and over. This is a "
                + $"statement about the pot, not a check against a specification."),
            posterior.Prior.Runs switch
            {
                0 => Say($"Shapes of curve by weight: {ByWeight(posterior)}."),
                1 => Say($"Shapes of curve by weight: {ByWeight(posterior)}. 1 earlier run of this base and thickener was used."),
                var runs => Say($"Shapes of curve by weight: {ByWeight(posterior)}. {runs.ToString("N0", Spaced)} earlier runs of this "
                    + $"base and thickener were used."),
            },
            .. study.DoseForTarget is { } dose ? [Meets(dose)] : Array.Empty<string>(),
            .. study.Advice is { } advice ? advice.Thickeners.Select(Limit) : [],
        ]);
    }

    private static StandingQuantity.OfBody Body(PotStanding standing) => standing.Quantities.OfType<StandingQuantity.OfBody>().Single();

    private static string Value(StandingQuantity quantity) => quantity switch
    {
        StandingQuantity.OfBody { Now: var body } => Say($"{Shown.Body(body.Median)} ({Shown.Spread(body)}, 9 times in 10)"),
        StandingQuantity.OfString { Now: var length } => Say($"string {Shown.Length(length.Median)} ({Shown.Spread(length)})"),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "not a case of the closed set"),
    };

    private static string Wanted(StandingQuantity quantity) => quantity switch
    {
        StandingQuantity.OfBody { Band: { } band } => Say($"Target {AdviceWords.Band(band)}."),
        StandingQuantity.OfString { Band: { } band }
            => Say($"String wanted: {Shown.Number(band.Low.Millimeters)} to {Shown.Length(band.High)}."),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "nothing is wanted of it"),
    };

    private static string Fitted(StandingQuantity quantity, Run run) => quantity switch
    {
        StandingQuantity.OfBody => Say($"The body is the settled viscosity at {RunFacts.Temperature(run)}: each reading is brought to that "
            + $"temperature (ln η linear in 1/T), the build-up after stirring is carried on to its end, and all readings of the run are "
            + $"fitted by one curve of body over dose."),
        _ => Say("The string is that of a lifted stick; its readings are fitted by one law over the doses of both thickeners, and its "
            + "interval contains it 9 times in 10."),
    };

    private static string Meets(DoseEstimate dose) => dose.High is { } high
        ? Say($"The curve meets the target at {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to {Shown.Dose(high)}, 9 times in 10).")
        : Say($"The curve meets the target at {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to beyond what was read, 9 times in 10).");

    private static string Limit(AdvisedThickener thickener)
        => Say($"Dose limit of {thickener.Name}: {Shown.Dose(thickener.Limit.Dose)}, {LimitWords.Of(thickener.Limit)}.");

    private static string ByWeight(Posterior posterior)
        => string.Join(", ", Shapes.All.Zip(posterior.ShapeWeights).Where(s => s.Second >= 0.05).OrderByDescending(s => s.Second)
        .Select(s => string.Create(Numbers, $"{Named(s.First.Name)} {100 * s.Second:0} %")));
}

/// <summary>Where a pot lies to what is wanted of it, in words.</summary>
/// <param name="Sign">One or two words.</param>
/// <param name="Words">The chances.</param>
/// <param name="Weight">How it is to look.</param>
internal sealed record Place(string Sign, string Words, ResultWeight Weight)
{
    public static Place Of(BandChances chances)
    {
        var words = Say($"Chance of being in band {Shown.Chance(chances.InBand)}, short {Shown.Chance(chances.Under)}, over "
            + $"{Shown.Chance(chances.Over)}.");
        var sure = IncrementPolicy.StopChance;
        return chances switch
        {
            _ when chances.InBand.Fraction >= sure => new(Say("In band"), words, ResultWeight.Good),
            _ when chances.Over.Fraction >= sure => new(Say("Over the band"), words, ResultWeight.Bad),
            _ when chances.Under.Fraction >= sure => new(Say("Short of the band"), words, ResultWeight.Bad),
            _ => new(Say("Not decided"), words, ResultWeight.Plain),
        };
    }
}
