using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Curves;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.RunFiles;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>All of one run on paper: the body with its uncertainty and how it was found, the curve, every row, corrections and voids.</summary>
internal static class RunReport
{
    /// <summary>Makes it.</summary>
    /// <param name="file">The run.</param>
    /// <param name="numbers">The numbers of its rows; empty to count them.</param>
    /// <param name="study">What it says.</param>
    /// <param name="issued">Today.</param>
    public static Paper Of(RunFile file, ImmutableArray<int> numbers, RunStudy study, DateOnly issued)
    {
        var run = file.Run;
        return new("Run report", RunFacts.Name(run), issued)
        {
            Subtitle = $"{run.Base.Name ?? "base"}, {Figures.Size(run.BaseMass)}{(run.Thickeners.IsEmpty ? "" : " with " + string.Join(" and ", run.Thickeners.Select(t => t.Name)))}",
            Blocks =
            [
                Result(run, study),
                Head(file, study),
                .. Curve(study),
                new Block.Heading("Every row"),
                RunRows.Of(file, numbers, study),
                new Block.Heading("Corrections, voids, doubts"),
                new Block.Points([.. Corrections.Of(file, numbers, study)]),
                new Block.Heading("How the body was found"),
                .. Method(run, study),
                new Block.Prose(Safety.Of(study.Advice?.Cautions ?? [])) { Lead = "Safety" },
                new Block.Signatures(["Made by", "Checked by"]),
            ],
            Foot = Foot.Of(run, file.Id),
        };
    }

    private static Block.Result Result(Run run, RunStudy study)
    {
        if (study.Pair is { } pair)
        {
            return pair.Result();
        }

        if (study.Now is not { } now)
        {
            return new("No body stated", Sentence.Of(study.Trouble ?? "nothing was read"), ResultWeight.Plain);
        }

        var name = study.Posterior!.Evidence.Thickener.Name;
        var pot = run.PotNow();
        var body = $"{Shown.Body(now.Median)} ({Shown.Spread(now)}, 9 times in 10) at {RunFacts.Temperature(run)} and {Shown.Dose(pot.DoseOf(name))} {name} ({Shown.Share(pot.ShareOf(name))} of total).";
        if (study.Band is not { } band)
        {
            return new(Shown.Body(now.Median), body, ResultWeight.Plain);
        }

        var place = Place.Of(BodyChances.Of(study.Posterior, pot.DoseOf(name), band));
        return new(place.Sign, $"{body} Target {AdviceWords.Band(band)}. {place.Words}", place.Weight);
    }

    private static Block.Facts Head(RunFile file, RunStudy study)
    {
        var run = file.Run;
        Fact?[] facts =
        [
            new("Base", run.Base.Name ?? "no name stated"),
            new("Base at start", Shown.Grams(run.BaseMass)),
            run.Lot is { } lot ? new("Lot", lot) : Fact.Blank("Lot"),
            run.Operator is { } who ? new("Operator", who) : Fact.Blank("Operator"),
            .. run.Thickeners.Select(t => new Fact("Thickener", RunFacts.Thickener(t))),
            new("Target", study.Band is { } band ? AdviceWords.Band(band) : "none stated"),
            run.TargetString is { } strings ? new("String wanted", $"{Shown.Number(strings.Low.Millimeters)} to {Shown.Length(strings.High)}") : null,
            new("Method", RunFacts.Method(run)),
            new("Stated at", RunFacts.Temperature(run)),
            new("Repeatability", RunFacts.Repeatability(run, study.Posterior?.Evidence.Run ?? run)),
            new("Scale", Figures.Step(run.ScaleStepInForce) + " steps"),
            RunFacts.Days(run) is { } days ? new("Made", days) : null,
            run.Note is { } note ? new("Note", note) : null,
        ];
        return new([.. facts.OfType<Fact>()]);
    }

    private static IEnumerable<Block> Curve(RunStudy study)
    {
        if (study.Pair is { } pair)
        {
            yield return pair.Map();
        }

        if (study.Picture is not { } picture)
        {
            yield break;
        }

        yield return new Block.Drawing(
            SvgPicture.Of(PictureFile.Svg(DosePlot.Of(picture))),
            $"Body over dose of {picture.Thickener} at {PlotText.Celsius(picture.ReferenceTemperature)}: readings, settled values, the believed curve with its bands{(picture.Target is null ? "" : ", the target band")}.");
    }

    private static IEnumerable<Block> Method(Run run, RunStudy study)
    {
        if (study.Pair is { } pair)
        {
            yield return pair.Method(run);
            yield break;
        }

        if (study is not { Posterior: { } posterior, Now: { } now })
        {
            yield return new Block.Prose($"It was not: {Sentence.Of(study.Trouble ?? "nothing was read")}");
            yield break;
        }

        var spread = Math.Log(now.High.MilliPascalSeconds / now.Low.MilliPascalSeconds) / (2 * 1.645);
        yield return new Block.Points(
        [
            $"Method: {RunFacts.Method(run)}; repeatability {RunFacts.Repeatability(run, posterior.Evidence.Run)}.",
            $"The body is the settled viscosity at {RunFacts.Temperature(run)}: each reading is brought to that temperature (ln η linear in 1/T), the build-up after stirring is carried on to its end, and all readings of the run bear on one curve of body over dose.",
            string.Create(CultureInfo.InvariantCulture, $"Uncertainty: {100 * spread:0.0} % of the value (standard uncertainty, from the repeatability, the number of readings, the temperature correction, the build-up still to come and the shapes of curve that fit); the interval stated holds the settled body 9 times in 10. The calibration of the instrument is not in it."),
            string.Create(CultureInfo.InvariantCulture, $"Decision rule: in band is said where the chance of it is {100 * IncrementPolicy.StopChance:0} % or more, the reading's own error counted; so are short and over. This is a statement on the pot, no check against a specification."),
            Shape(posterior),
            .. Dose(study, posterior),
        ]);
    }

    private static string Shape(Posterior posterior)
    {
        var shapes = Shapes.All.Zip(posterior.ShapeWeights).Where(s => s.Second >= 0.05).OrderByDescending(s => s.Second)
            .Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.First.Name} {100 * s.Second:0} %"));
        var history = posterior.Prior.Runs == 0 ? "" : $" {Count.Of(posterior.Prior.Runs, "earlier run", "earlier runs")} of this base and thickener helped.";
        return $"Shapes of curve by weight: {string.Join(", ", shapes)}.{history}";
    }

    private static IEnumerable<string> Dose(RunStudy study, Posterior posterior)
    {
        if (study.Band is { } band && posterior.DoseFor(band.Aim, Advisor.Level) is { } dose)
        {
            var high = dose.High is { } end ? Shown.Dose(end) : "beyond what was read";
            yield return $"The curve meets the target at {Shown.Dose(dose.Median)} ({Shown.Dose(dose.Low)} to {high}, 9 times in 10).";
        }

        if (study.Advice is { } advice)
        {
            yield return $"Dose limit: {Shown.Dose(advice.Thickener.Limit.Dose)}, {advice.Thickener.Limit.Why}.";
        }
    }
}
