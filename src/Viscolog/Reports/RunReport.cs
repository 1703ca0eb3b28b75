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
        var trouble = Sentence.Of(StudyBlocks.Trouble(outcome) ?? Say("nothing was read"));
        return new(Say("Run report"), RunFacts.Name(run), issued)
        {
            Subtitle = run.Thickeners.IsEmpty
                ? $"{run.Base.Name ?? Say("base")}, {Figures.Size(run.BaseMass)}"
                : Say($"{run.Base.Name ?? Say("base")}, {Figures.Size(run.BaseMass)} with "
                    + $"{string.Join(Say(" and "), run.Thickeners.Select(t => t.Name))}"),
            Blocks =
            [
                told is null ? new Block.Result(Say("No body given"), trouble, ResultWeight.Plain) : StudyBlocks.Result(told),
                Head(file, asked.BandInForce, study),
                .. told is null ? Array.Empty<Block>() : [StudyBlocks.Drawing(told)],
                new Block.Heading(Say("Every row")),
                RunRows.Of(file, numbers, told),
                new Block.Heading(Say("Corrections, voids, doubts")),
                new Block.Points([.. Corrections.Of(file, numbers, study)]),
                new Block.Heading(Say("How the body was found")),
                told is null ? new Block.Prose(Say($"It was not: {trouble}")) : StudyBlocks.Method(run, told),
                new Block.Prose(Safety.Of(told?.Advice?.Cautions ?? [])) { Lead = Say("Safety") },
                new Block.Signatures([Say("Made by", "report"), Say("Checked by")]),
            ],
            Foot = Foot.Of(run, file.Id),
        };
    }

    private static Block.Facts Head(RunFile file, ViscosityBand? band, Study? study)
    {
        var run = file.Run;
        return Block.Facts.Of(
        [
            new(Say("Base"), run.Base.Name ?? Say("no name given")),
            new(Say("Base at start"), Shown.Grams(run.BaseMass)),
            new(Say("Lot"), run.Lot),
            new(Say("Operator"), run.Operator),
            .. run.Thickeners.Select(t => new Fact(Say("Thickener"), RunFacts.Thickener(t))),
            new(Say("Target"), band is not null ? AdviceWords.Band(band) : Say("none given")),
            run.TargetString is { } strings
                ? new(Say("String wanted"), Say($"{Shown.Number(strings.Low.Millimeters)} to {Shown.Length(strings.High)}"))
                : null,
            new(Say("Method"), RunFacts.Method(run)),
            new(Say("Reference temperature"), RunFacts.Temperature(run)),
            new(Say("Repeatability"), RunFacts.Repeatability(run, study?.Evidence.Run ?? run)),
            new(Say("Scale"), Say($"{Figures.Step(run.ScaleStepInForce)} steps")),
            Fact.Known(Say("Made"), RunFacts.Days(run)),
            Fact.Known(Say("Note"), run.Note),
        ]);
    }
}
