using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Curves;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>What a report says of a run with two thickeners, one for body and one for the string.</summary>
/// <param name="Posterior">What the run says.</param>
/// <param name="Advice">The advice on it.</param>
/// <param name="Wanted">The string lengths wanted.</param>
internal sealed record PairStudy(Posterior Posterior, Advice Advice, StringBand Wanted)
{
    /// <summary>Where body and string lie to their bands.</summary>
    public Block.Result Result()
    {
        if (Advice is not { Body: { Now: { } body, Band: var band }, StringLength.Now: { } length, Thickeners: [var about, var other] })
        {
            return new("Not both read", "Body and string are both needed to say where the pot stands: read the one that is missing.", ResultWeight.Plain);
        }

        var isBody = body.Low >= band.Low && body.High <= band.High;
        var isString = length.Low >= Wanted.Low && length.High <= Wanted.High;
        var words = $"Body {Shown.Body(body.Median)} ({Shown.Spread(body)}, 9 times in 10), target {AdviceWords.Band(band)}. String {Shown.Length(length.Median)} ({Shown.Spread(length)}), wanted {Shown.Number(Wanted.Low.Millimeters)} to {Shown.Length(Wanted.High)}. "
            + $"At {Shown.Dose(about.DoseNow)} {about.Name} and {Shown.Dose(other.DoseNow)} {other.Name}, {RunFacts.Temperature(Posterior.Evidence.Run)}.";
        return isBody && isString
            ? new("Both in band", words, ResultWeight.Good)
            : new(isBody ? "Body in band, string not" : isString ? "String in band, body not" : "Not in band", words, ResultWeight.Plain);
    }

    /// <summary>The map of both doses.</summary>
    public Block.Drawing Map() => new(
        SvgPicture.Of(PictureFile.Svg(PairMapPlot.Of(PairPictures.Of(Posterior, Advice.Body.Band, Advice, Advisor.Level)))),
        "Body and string over the doses of both thickeners, with what is wanted of each.");

    /// <summary>How body and string were found.</summary>
    public Block.Points Method(Run stated)
    {
        var shapes = Shapes.All.Zip(Posterior.ShapeWeights).Where(s => s.Second >= 0.05).OrderByDescending(s => s.Second)
            .Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.First.Name} {100 * s.Second:0} %"));
        return new(
        [
            $"Method: {RunFacts.Method(stated)}; repeatability {RunFacts.Repeatability(stated, Posterior.Evidence.Run)}. Strings: a lifted stick.",
            $"All readings of the run bear on one law of body and one of string over both doses, at {RunFacts.Temperature(stated)}. Shapes of the body's curve by weight: {string.Join(", ", shapes)}.",
            "The intervals hold the settled body, and the string, 9 times in 10: repeatability, number of readings, temperature correction, build-up and shapes are in them, the calibration of the instrument is not.",
            "Decision rule: in band is said where the whole interval lies in the band. This is a statement on the pot, no check against a specification.",
        ]);
    }
}
