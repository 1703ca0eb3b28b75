using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>
/// All of one run on paper: the body with its uncertainty and how it was found, the curve, every row, corrections and voids.
/// </summary>
internal static class RunReport
{
    /// <summary>Makes it.</summary>
    /// <param name="file">The run.</param>
    /// <param name="numbers">The numbers of its rows; empty to count them.</param>
    /// <param name="asked">What is asked of it.</param>
    /// <param name="issued">Today.</param>
    public static Paper Of(RunFile file, ImmutableArray<int> numbers, StudyRequest asked, DateOnly issued)
    {
        var run = file.Run;
        var outcome = Study.Of(asked);
        var study = (outcome as StudyOutcome.Made)?.Study;
        var told = StudyBlocks.Told(outcome);
        var trouble = Sentence.Of(StudyBlocks.Trouble(outcome) ?? "nothing was read");
        return new("Run report", RunFacts.Name(run), issued)
        {
            Subtitle = $"{run.Base.Name ?? "base"}, {Figures.Size(run.BaseMass)}"
                + (run.Thickeners.IsEmpty ? "" : " with " + string.Join(" and ", run.Thickeners.Select(t => t.Name))),
            Blocks =
            [
                told is null ? new Block.Result("No body given", trouble, ResultWeight.Plain) : StudyBlocks.Result(told),
                Head(file, asked.BandInForce, study),
                .. told is null ? Array.Empty<Block>() : [StudyBlocks.Drawing(told)],
                new Block.Heading("Every row"),
                RunRows.Of(file, numbers, told),
                new Block.Heading("Corrections, voids, doubts"),
                new Block.Points([.. Corrections.Of(file, numbers, study)]),
                new Block.Heading("How the body was found"),
                told is null ? new Block.Prose($"It was not: {trouble}") : StudyBlocks.Method(run, told),
                new Block.Prose(Safety.Of(told?.Advice?.Cautions ?? [])) { Lead = "Safety" },
                new Block.Signatures(["Made by", "Checked by"]),
            ],
            Foot = Foot.Of(run, file.Id),
        };
    }

    private static Block.Facts Head(RunFile file, ViscosityBand? band, Study? study)
    {
        var run = file.Run;
        return Block.Facts.Of(
        [
            new("Base", run.Base.Name ?? "no name given"),
            new("Base at start", Shown.Grams(run.BaseMass)),
            new("Lot", run.Lot),
            new("Operator", run.Operator),
            .. run.Thickeners.Select(t => new Fact("Thickener", RunFacts.Thickener(t))),
            new("Target", band is not null ? AdviceWords.Band(band) : "none given"),
            run.TargetString is { } strings ? new("String wanted", $"{Shown.Number(strings.Low.Millimeters)} to "
                + $"{Shown.Length(strings.High)}") : null,
            new("Method", RunFacts.Method(run)),
            new("Reference temperature", RunFacts.Temperature(run)),
            new("Repeatability", RunFacts.Repeatability(run, study?.Evidence.Run ?? run)),
            new("Scale", Figures.Step(run.ScaleStepInForce) + " steps"),
            Fact.Known("Made", RunFacts.Days(run)),
            Fact.Known("Note", run.Note),
        ]);
    }
}
