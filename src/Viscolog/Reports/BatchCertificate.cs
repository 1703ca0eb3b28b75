using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.RunFiles;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>
/// A batch against its specification, on paper: what was wanted and found, uncertainty, decision rule, the readings, corrections and
/// voids. Only a batch that is
/// accepted gets a certificate; any other gets the record of its check.
/// </summary>
internal static class BatchCertificate
{
    /// <summary>The coverage factor where the uncertainty is known (JCGM 100:2008, 6.3.3).</summary>
    private const int NormalFactor = 2;

    /// <summary>Makes it.</summary>
    /// <param name="file">The batch as it was checked.</param>
    /// <param name="numbers">The numbers of its rows; empty to count them.</param>
    /// <param name="check">The check.</param>
    /// <param name="study">What the run says, for its picture.</param>
    /// <param name="issued">Today.</param>
    public static Paper Of(RunFile file, ImmutableArray<int> numbers, BatchCheck check, Study? study, DateOnly issued)
    {
        var isAccepted = check.Verdict is Verdict.Accept;
        return new(isAccepted ? Say("Batch certificate") : Say("Batch check, no certificate"), RunFacts.Name(file.Run), issued)
        {
            Subtitle = check.Specification.Name,
            Blocks =
            [
                Result(check),
                Head(file.Run, check),
                new Block.Heading(Say("Results")),
                Results(check),
                .. Uncertainty(check),
                .. Readings(file, numbers, check, study),
                new Block.Heading(Say("Corrections, voids, remarks")),
                new Block.Points([.. Remarks(file, numbers, check, study, issued)]),
                new Block.Signatures(
                    isAccepted ? [Say("Tested by"), Say("Checked by"), Say("Released by")] : [Say("Tested by"), Say("Checked by")]),
            ],
            Foot = Foot.Of(file.Run, file.Id),
        };
    }

    private static Block.Result Result(BatchCheck check) => check.Verdict switch
    {
        Verdict.Accept => new(
            Say("Accepted"), Say($"The batch meets its specification{Specified(check)}{Conforms(check)}."), ResultWeight.Good),
        Verdict.Reject reject => new(
            Say("Rejected"), $"{Sentence.Of(CheckWords.Of(reject))} {CheckWords.Next(check)}", ResultWeight.Bad),
        Verdict.Undecided undecided => new(
            Say("Not decided"), $"{Sentence.Of(CheckWords.Of(undecided.Why))} {CheckWords.Next(check)}", ResultWeight.Plain),
        _ => throw new ArgumentOutOfRangeException(nameof(check), check.Verdict, "not a case of the closed set"),
    };

    /// <summary>What was asked for and what was found, as who reads a certificate asks.</summary>
    private static string Specified(BatchCheck check) => check.Body is { Value: { } value } body
        ? Say($": viscosity {Found(value)} mPa·s at {RunFacts.Temperature(check.Run)} (expanded uncertainty U = "
            + $"{CheckWords.ExpandedUncertainty(value)} mPa·s, k = {CheckWords.CoverageFactor(value)}), from {Wanted(body)} mPa·s as "
            + $"specified by '{check.Specification.Name}'")
        : $" '{check.Specification.Name}'";

    private static string Conforms(BatchCheck check)
        => check.Chance is { } known ? Say($"; probability of conformity {Chance(known)}") : "";

    private static Block.Facts Head(Run run, BatchCheck check)
    {
        var pot = run.PotNow();
        return Block.Facts.Of(
        [
            run.Product != check.Specification.Name ? Fact.Known(Say("Product"), run.Product) : null,
            new(Say("Specification"), check.Specification.Name),
            new(Say("Lot of base"), run.Lot),
            new(Say("Base"), run.Base.Name ?? Say("no name given")),
            new(Say("Batch size"), Figures.Size(pot.Total)),
            .. run.Thickeners.Where(t => pot.In(t.Name) > Mass.None)
                .Select(t => new Fact(Say("Thickener"), Say($"{Shown.Dose(pot.DoseOf(t.Name))} {t.Name} on base"))),
            Fact.Known(Say("Made"), RunFacts.Days(run)),
            Fact.Known(Say("Operator"), run.Operator),
            RunFacts.Days(run) is null ? Fact.Blank(Say("Made")) : null,
            run.Operator is null ? Fact.Blank(Say("Operator")) : null,
            Fact.Blank(check.Verdict is Verdict.Accept ? Say("Certificate no.") : Say("Record no.")),
        ]);
    }

    private static Block.Grid Results(BatchCheck check)
    {
        var rows = ImmutableArray.CreateBuilder<GridRow>();
        var at = RunFacts.Temperature(check.Run);
        if (check.Body is { } body)
        {
            rows.Add(GridRow.Of(
                Say($"viscosity at {at}, mPa·s"),
                RunFacts.Method(check.Run, check.Condition),
                Wanted(body),
                body.Value is { } value ? Found(value) : "–",
                body.Value is { } known ? CheckWords.ExpandedUncertainty(known) : "–",
                body.Value is { } factor ? CheckWords.CoverageFactor(factor) : "–",
                Chance(body.Chance)));
        }

        if (check.Acidity is { } acidity)
        {
            rows.Add(GridRow.Of(
                "pH", Say("pH meter"), CheckWords.Ph(acidity.Band), acidity.Mean?.Ph.ToString("0.00", Numbers) ?? "–",
                (NormalFactor * AcidityCheck.StandardUncertainty).ToString("0.00", Numbers),
                "2",
                Chance(acidity.Chance)));
        }

        if (check.StringLength is { } strings)
        {
            rows.Add(GridRow.Of(
                Say("string length, mm"), Say("lifted stick"),
                Say($"{Shown.Number(strings.Band.Low.Millimeters)} to {Shown.Number(strings.Band.High.Millimeters)}"),
                strings.Mean is { } mean
                    ? Shown.Number(mean.Millimeters)
                    : "–",
                strings.Mean is { } drawn ? Shown.Number(NormalFactor * strings.Uncertainty.Fraction * drawn.Millimeters) : "–", "2",
                Chance(strings.Chance)));
        }

        return new(
            [
                new(Say("quantity")), new(Say("method")),
                .. GridColumn.Numbers(Say("specified"), Say("found"), Say("expanded uncertainty U"), "k", Say("conforms by")),
            ],
            rows.ToImmutable());
    }

    private static string Wanted(BodyCheck body)
        => Shown.Edges(body.Band);

    private static string Found(BatchValue value) => Shown.ToUncertainty(value.Body, value.StandardUncertainty);

    private static string Chance(Percentage? chance)
        => chance is not { } known ? "–" : known.Percent switch
        {
            > 99.9 => Say($"above {99.9} %"),
            >= 99.5 => known.Percent.ToString("0.0", Numbers) + " %",
            _ => Shown.Chance(known),
        };

    private static IEnumerable<Block> Uncertainty(BatchCheck check)
    {
        if (check.Body is { Value: { } value } body)
        {
            yield return new Block.Prose(Say($"Found is the {CheckWords.Mean(value)}, brought to {RunFacts.Temperature(check.Run)}."));
            yield return new Block.Prose(Sentence.Of(CheckWords.Rule(body))) { Lead = Say("Decision rule") };
            var parts = value.Parts.Select(p => $"{UncertaintyWords.Name(p)} {CheckWords.Relative(p.Size)} ({UncertaintyWords.Of(p)})");
            yield return new Block.Prose(Say($"U is k times the standard uncertainty of {CheckWords.Relative(value.Uncertainty)} "
                + $"({UncertaintyOf(value)} mPa·s) and contains the value 95 times in 100; {Factor(value)}. "
                + $"The standard uncertainty is the root of the sum of squares of {string.Join("; ", parts)}."))
            {
                Lead = Say("Uncertainty of the viscosity"),
            };
        }
        else
        {
            yield return new Block.Prose(Sentence.Of(CheckWords.Rule())) { Lead = Say("Decision rule") };
        }
    }

    /// <summary>The rows since the batch was last changed, and how they settled.</summary>
    private static IEnumerable<Block> Readings(RunFile file, ImmutableArray<int> numbers, BatchCheck check, Study? study)
    {
        var entries = file.Run.Entries;
        var change = Enumerable.Range(0, entries.Length).LastOrDefault(i => entries[i].Counts && Steps.Begins(entries[i]));
        var from = Math.Max(
            0, file.Rows.Select((r, i) => (r, i)).Where(r => r.r.FirstEntry <= change).Select(r => r.i).DefaultIfEmpty(0).Max());
        yield return new Block.Heading(Say("Readings of the batch as it was"));
        yield return RunRows.Of(file, numbers, study, from);
        if (check.Body is { Value: { } value } body && study is { Picture: { Steps: [.., var last] } picture }
            && picture.Readings.Any(r => r.Step == last.Step && r.Wait is not null))
        {
            yield return new Block.Drawing(
                SvgPicture.Of(PictureFile.Svg(
                    VerdictPlot.Of(picture, body.Band, Say($"wanted {Wanted(body)} {PlotText.Unit}"), Found95(value)),
                    PictureFile.LowHeight)),
                Say("The readings over standing time, the value found with its interval, and the band wanted."));
        }
    }

    private static string UncertaintyOf(BatchValue value) => Shown.ToUncertainty(value.StandardUncertainty, value.StandardUncertainty);

    /// <summary>Where the coverage factor comes from.</summary>
    private static string Factor(BatchValue value)
        => Say($"k = {CheckWords.CoverageFactor(value)} (Student's t with {UncertaintyWords.Freedom(value.DegreesOfFreedom)})");

    /// <summary>The value with its interval of 95 %.</summary>
    private static Estimate Found95(BatchValue value)
    {
        var wide = value.Coverage * value.Uncertainty.Fraction;
        return new(value.Body, Viscosity.FromLn(value.Body.Ln - wide), Viscosity.FromLn(value.Body.Ln + wide), Percentage.FromPercent(95));
    }

    private static IEnumerable<string> Remarks(RunFile file, ImmutableArray<int> numbers, BatchCheck check, Study? study, DateOnly today)
    {
        var corrections = Corrections.Of(file, numbers, study).ToArray();
        string[] remarks =
        [
            .. check.Warnings.Select(w => Sentence.Of(CheckRemarks.Of(w))),
            .. check.Drift is { } drift ? [Sentence.Of(DriftWords.Stated(drift, today))] : Array.Empty<string>(),
        ];
        return [.. corrections, .. remarks.Except(corrections, StringComparer.Ordinal)];
    }
}
