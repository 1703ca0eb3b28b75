using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.RunFiles;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>
/// A batch against its specification, on paper: what was wanted and found, uncertainty, decision rule, the readings, corrections and voids. Only a batch that is
/// accepted gets a certificate; any other gets the record of its check.
/// </summary>
internal static class BatchCertificate
{
    /// <summary>Makes it.</summary>
    /// <param name="file">The batch as it was checked.</param>
    /// <param name="numbers">The numbers of its rows; empty to count them.</param>
    /// <param name="check">The check.</param>
    /// <param name="study">What the run says, for its picture.</param>
    /// <param name="issued">Today.</param>
    public static Paper Of(RunFile file, ImmutableArray<int> numbers, BatchCheck check, RunStudy study, DateOnly issued)
    {
        var isAccepted = check.Verdict is Verdict.Accept;
        return new(isAccepted ? "Batch certificate" : "Record of a check: no certificate", RunFacts.Name(file.Run), issued)
        {
            Subtitle = check.Specification.Name,
            Blocks =
            [
                Result(check),
                Head(file.Run, check),
                new Block.Heading("Results"),
                Results(check),
                .. Uncertainty(check),
                .. Readings(file, numbers, study),
                new Block.Heading("Corrections, voids, remarks"),
                new Block.Points([.. Remarks(file, numbers, check, study, issued)]),
                new Block.Signatures(isAccepted ? ["Tested by", "Checked by", "Released by"] : ["Tested by", "Checked by"]),
            ],
            Foot = Foot.Of(file.Run, file.Id) + " It speaks of the batch as it stood when it was read.",
        };
    }

    private static Block.Result Result(BatchCheck check) => check.Verdict switch
    {
        Verdict.Accept => new("Accepted", $"The batch meets the specification '{check.Specification.Name}'{Conforms(check)}.", ResultWeight.Good),
        Verdict.Reject reject => new("Rejected", $"{Sentence.Of(reject.Why)} {CheckWords.Next(check.Next)}", ResultWeight.Bad),
        Verdict.Undecided undecided => new("Not decided", $"{Sentence.Of(undecided.Why)} {CheckWords.Next(check.Next)}", ResultWeight.Plain),
        _ => throw new ArgumentOutOfRangeException(nameof(check), check.Verdict, "not a case of the closed set"),
    };

    private static string Conforms(BatchCheck check) => check.Chance is { } chance ? $"; probability of conformity {Shown.Chance(chance)}" : "";

    private static Block.Facts Head(Run run, BatchCheck check)
    {
        var pot = run.PotNow();
        Fact?[] facts =
        [
            new("Product", run.Product ?? check.Specification.Name),
            new("Specification", check.Specification.Name),
            new("Batch", RunFacts.Name(run)),
            run.Lot is { } lot ? new("Lot of base", lot) : Fact.Blank("Lot of base"),
            new("Base", run.Base.Name ?? "no name stated"),
            new("Batch size", Figures.Size(pot.Total)),
            .. run.Thickeners.Where(t => pot.In(t.Name) > Mass.None).Select(t => new Fact("Thickener", $"{Shown.Dose(pot.DoseOf(t.Name))} {t.Name} on base")),
            RunFacts.Days(run) is { } days ? new("Made", days) : Fact.Blank("Made"),
            run.Operator is { } who ? new("Operator", who) : Fact.Blank("Operator"),
            Fact.Blank("Certificate no."),
        ];
        return new([.. facts.OfType<Fact>()]);
    }

    private static Block.Grid Results(BatchCheck check)
    {
        var rows = ImmutableArray.CreateBuilder<GridRow>();
        var at = RunFacts.Temperature(check.Run);
        if (check.Body is { } body)
        {
            rows.Add(GridRow.Of(
                $"viscosity at {at}, mPa·s", check.Condition?.Words ?? check.Run.MethodInForce.Id, $"{Shown.Limit(body.Band.Low.MilliPascalSeconds)} to {Shown.Limit(body.Band.High.MilliPascalSeconds)}",
                body.Value is { } value ? Found(value) : "–",
                body.Value is { } known ? CheckWords.Relative(known.Uncertainty) : "–",
                Chance(body.Chance)));
        }

        if (check.Acidity is { } acidity)
        {
            rows.Add(GridRow.Of("pH", "pH meter", CheckWords.Ph(acidity.Band), acidity.Mean?.Ph.ToString("0.00", CultureInfo.InvariantCulture) ?? "–", AcidityCheck.StandardUncertainty.ToString("0.0", CultureInfo.InvariantCulture), Chance(acidity.Chance)));
        }

        if (check.StringLength is { } strings)
        {
            rows.Add(GridRow.Of(
                "string length, mm", "lifted stick", $"{Shown.Number(strings.Band.Low.Millimeters)} to {Shown.Number(strings.Band.High.Millimeters)}",
                strings.Mean is { } mean ? Shown.Number(mean.Millimeters) : "–", CheckWords.Relative(strings.Uncertainty), Chance(strings.Chance)));
        }

        return new(
            [new("quantity"), new("method"), new("wanted", GridFill.Numbers), new("found", GridFill.Numbers), new("standard uncertainty", GridFill.Numbers), new("conforms by", GridFill.Numbers)],
            rows.ToImmutable());
    }

    private static string Found(BatchValue value) => Shown.Uncertain(value.Body, value.StandardUncertainty).Split(" ±")[0];

    private static string Chance(Percentage? chance) => chance is { } known ? Shown.Chance(known) : "–";

    private static IEnumerable<Block> Uncertainty(BatchCheck check)
    {
        if (check.Body is { Value: { } value } body)
        {
            yield return new Block.Prose($"Found is the {CheckWords.Mean(value)}, at {RunFacts.Temperature(check.Run)}. Decision rule: {CheckWords.Rule(body)}.");
            yield return new Block.Heading("Uncertainty of the viscosity");
            yield return new Block.Grid(
                [new("from"), new("%", GridFill.Numbers), new("how it was found")],
                [
                    .. value.Parts.Select(p => GridRow.Of(p.Name, p.Size.Percent.ToString("0.0", CultureInfo.InvariantCulture), p.Words)),
                    GridRow.Of("in all", value.Uncertainty.Percent.ToString("0.0", CultureInfo.InvariantCulture), "root of the sum of squares; twice this holds the value 95 times in 100") with { IsTotal = true },
                ]);
        }
        else
        {
            yield return new Block.Prose($"Decision rule: {DecisionRule.Words}.");
        }
    }

    /// <summary>The rows since the batch was last changed, and how they settled.</summary>
    private static IEnumerable<Block> Readings(RunFile file, ImmutableArray<int> numbers, RunStudy study)
    {
        var entries = file.Run.Entries;
        var change = Enumerable.Range(0, entries.Length).LastOrDefault(i => entries[i].Counts && Steps.Begins(entries[i]));
        var from = Math.Max(0, file.Rows.Select((r, i) => (r, i)).Where(r => r.r.FirstEntry <= change).Select(r => r.i).DefaultIfEmpty(0).Max());
        yield return new Block.Heading("Readings of the batch as it is");
        yield return RunRows.Of(file, numbers, study, from);
        if (study.Picture is { Steps: [.., var last] } picture && picture.Readings.Any(r => r.Step == last.Step && r.Wait is not null))
        {
            var ofLast = picture with { Steps = [last], Readings = [.. picture.Readings.Where(r => r.Step == last.Step)], Next = null, Limit = null };
            yield return new Block.Drawing(
                SvgPicture.Of(PlotRenderer.Render([ofLast], PlotKind.Settling, PlotFormat.Svg)),
                "The readings over standing time, the settled value that they lead to, and the wanted band.");
        }
    }

    private static IEnumerable<string> Remarks(RunFile file, ImmutableArray<int> numbers, BatchCheck check, RunStudy study, DateOnly today)
    {
        var corrections = Corrections.Of(file, numbers, study).ToArray();
        string[] remarks = [.. check.Warnings.Select(Sentence.Of), .. check.Drift is { } drift ? [Sentence.Of(drift.Words(today))] : Array.Empty<string>()];
        return [.. corrections, .. remarks.Except(corrections, StringComparer.Ordinal)];
    }
}
