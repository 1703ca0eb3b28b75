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
        StudyOutcome.Made { Study: { IsRead: false, IsOfTwo: false } } => Say("no reading of it counts"),
        _ => null,
    };

    /// <summary>Where the pot stands.</summary>
    public static Block.Result Result(Study study) => study.IsOfTwo ? ResultOfTwo(study) : ResultOfOne(study);

    /// <summary>The curve, or the map of two doses.</summary>
    public static Block.Drawing Drawing(Study study)
    {
        var (thickener, at) = (study.Picture.Thickener, PlotText.Celsius(study.Picture.ReferenceTemperature));
        var words = study switch
        {
            { IsOfTwo: true } => Say("Body and string over the doses of both thickeners, with what is wanted of each."),
            { Band: null } => Say($"Body over dose of {thickener} at {at}: readings, settled values, the estimated curve with its bands."),
            _ => Say($"Body over dose of {thickener} at {at}: readings, settled values, the estimated curve with its bands, the target "
                + $"band."),
        };
        return new(SvgPicture.Of(PictureFile.Svg(RunPlots.Usual(study.Picture))), words);
    }

    /// <summary>How it was found.</summary>
    /// <param name="stated">The run as its file states it.</param>
    /// <param name="study">What it says.</param>
    public static Block.Points Method(Run stated, Study study) => new(
    [
        study.IsOfTwo
            ? Say($"Method: {RunFacts.Method(stated)}; repeatability {RunFacts.Repeatability(stated, study.Evidence.Run)}. Strings: a "
                + $"lifted stick.")
            : Say($"Method: {RunFacts.Method(stated)}; repeatability {RunFacts.Repeatability(stated, study.Evidence.Run)}."),
        .. study.IsOfTwo ? MethodOfTwo(stated, study) : MethodOfOne(stated, study),
    ]);

    private static Estimate Now(Study study)
        => study.Posterior.BodyAt(study.Run.PotNow().DoseOf(study.Evidence.Thickener.Name), Study.Level);

    private static Block.Result ResultOfOne(Study study)
    {
        var (run, now, name, pot) = (study.Run, Now(study), study.Evidence.Thickener.Name, study.Run.PotNow());
        var body = Say($"{Shown.Body(now.Median)} ({Shown.Spread(now)}, 9 times in 10) at {RunFacts.Temperature(run)} and "
            + $"{Shown.Dose(pot.DoseOf(name))} {name} ({Shown.Share(pot.ShareOf(name))} of total).");
        if (study.Band is not { } band)
        {
            return new(Shown.Body(now.Median), body, ResultWeight.Plain);
        }

        var place = Place.Of(BodyChances.Of(study.Posterior, pot.DoseOf(name), band));
        return new(place.Sign, Say($"{body} Target {AdviceWords.Band(band)}. {place.Words}"), place.Weight);
    }

    private static Block.Result ResultOfTwo(Study study)
    {
        if (study.Advice is not
            {
                Body: { Now: { } body, Band: var band },
                StringLength: { Now: { } length, Band: var wanted },
                Thickeners: [var about, var other],
            })
        {
            return new(
                Say("Not both read"),
                Say("Body and string are both needed to say where the pot stands: read the one that is missing."),
                ResultWeight.Plain);
        }

        var isBody = body.Low >= band.Low && body.High <= band.High;
        var isString = length.Low >= wanted.Low && length.High <= wanted.High;
        var words = Say($"Body {Shown.Body(body.Median)} ({Shown.Spread(body)}, 9 times in 10), target {AdviceWords.Band(band)}. String "
            + $"{Shown.Length(length.Median)} ({Shown.Spread(length)}), wanted {Shown.Number(wanted.Low.Millimeters)} to "
            + $"{Shown.Length(wanted.High)}. "
            + $"At {Shown.Dose(about.DoseNow)} {about.Name} and {Shown.Dose(other.DoseNow)} {other.Name}, "
            + $"{RunFacts.Temperature(study.Evidence.Run)}.");
        return isBody && isString
            ? new(Say("Both in band"), words, ResultWeight.Good)
            : new(
                isBody ? Say("Body in band, string not") : isString ? Say("String in band, body not") : Say("Not in band"), words,
                ResultWeight.Plain);
    }

    private static IEnumerable<string> MethodOfOne(Run run, Study study)
    {
        var (posterior, now) = (study.Posterior, Now(study));
        var spread = Math.Log(now.High.MilliPascalSeconds / now.Low.MilliPascalSeconds) / (2 * 1.645);
        yield return Say($"The body is the settled viscosity at {RunFacts.Temperature(run)}: each reading is brought to that temperature "
            + $"(ln η linear in 1/T), the build-up after stirring is carried on to its end, and all readings of the run are fitted by one "
            + $"curve of body over dose.");
        yield return Say($"Uncertainty: {100 * spread:0.0} % of the value (standard uncertainty, "
            + $"from the repeatability, the number of readings, the temperature correction, the build-up still to come and the shapes of "
            + $"curve that fit); the interval given contains the settled body 9 times in 10. The calibration of the instrument is not "
            + $"included.");
        yield return Say($"Decision rule: in band is stated if the chance of it is "
            + $"{100 * IncrementPolicy.StopChance:0} % or more, allowing for reading error; likewise short and over. This is a statement "
            + $"about the pot, not a check against a specification.");
        yield return posterior.Prior.Runs switch
        {
            0 => Say($"Shapes of curve by weight: {ByWeight(posterior)}."),
            1 => Say($"Shapes of curve by weight: {ByWeight(posterior)}. 1 earlier run of this base and thickener was used."),
            var runs => Say($"Shapes of curve by weight: {ByWeight(posterior)}. {runs.ToString("N0", Spaced)} earlier runs of this base "
                + $"and thickener were used."),
        };
        if (study.Band is { } band && posterior.DoseFor(band.Aim, Study.Level) is { } dose)
        {
            yield return dose.High is { } high
                ? Say($"The curve meets the target at {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to {Shown.Dose(high)}, 9 times in "
                    + $"10).")
                : Say($"The curve meets the target at {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to beyond what was read, 9 times "
                    + $"in 10).");
        }

        if (study.Advice is { Thickener.Limit: var limit })
        {
            yield return Say($"Dose limit: {Shown.Dose(limit.Dose)}, {LimitWords.Of(limit)}.");
        }
    }

    private static IEnumerable<string> MethodOfTwo(Run run, Study study) =>
    [
        Say($"All readings of the run are fitted by one law of body and one of string over both doses, at {RunFacts.Temperature(run)}. "
            + $"Shapes of the body's curve by weight: {ByWeight(study.Posterior)}."),
        Say("The intervals contain the settled body, and the string, 9 times in 10: repeatability, number of readings, temperature "
            + "correction, build-up and shapes are included, the calibration of the instrument is not."),
        Say("Decision rule: in band is stated if the whole interval is within the band. This is a statement about the pot, not a check "
            + "against a specification."),
    ];

    private static string ByWeight(Posterior posterior)
        => string.Join(", ", Shapes.All.Zip(posterior.ShapeWeights).Where(s => s.Second >= 0.05).OrderByDescending(s => s.Second)
        .Select(s => string.Create(Numbers, $"{Named(s.First.Name)} {100 * s.Second:0} %")));
}

/// <summary>Where a body lies to its band, in words.</summary>
/// <param name="Sign">One or two words.</param>
/// <param name="Words">The chances.</param>
/// <param name="Weight">How it is to look.</param>
internal sealed record Place(string Sign, string Words, ResultWeight Weight)
{
    public static Place Of(BodyChances chances)
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
