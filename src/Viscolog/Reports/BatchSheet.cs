using System.Collections.Immutable;
using Viscolog.Core.Batches;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>The sheet that a batch is made by: what to weigh, what to add in which steps, what to read, room to write it down.</summary>
internal static class BatchSheet
{
    /// <summary>Makes it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="colour">How far the colour concentrate goes; null for the usual range.</param>
    /// <param name="issued">Today.</param>
    public static Paper Of(BatchPlan plan, ColourYield? colour, DateOnly issued)
    {
        var run = plan.Run;
        return new(Say("Batch sheet"), RunFacts.Name(run), issued)
        {
            Subtitle = Say($"{Size(plan)} of {run.Base.Name ?? Say("base")} with "
                + $"{string.Join(Say(" and "), plan.Recipe.Parts.Select(p => p.Thickener.Name))}"),
            Blocks =
            [
                Head(plan),
                new Block.Prose(BatchWords.Of(plan.Source)),
                new Block.Heading(Say("1  Weigh")),
                Weighing(plan),
                new Block.Prose(Say($"Scale: {Figures.Step(plan.BaseScaleStep)} or finer for the base, {Figures.Step(plan.ScaleStep)} or "
                    + $"finer for the thickener, so that no addition is under three of its steps. Grams are rounded down: more can be "
                    + $"added, but nothing taken out.")),
                .. Colour(plan, colour),
                new Block.Heading(Say("2  Dose and read")),
                new Block.Prose(How(plan)),
                Dosing(plan),
                new Block.Points([.. Rules(plan), .. plan.Notes.Select(n => Sentence.Of(BatchWords.Of(n)))]),
                new Block.Prose(Safety.Of(plan.Cautions)) { Lead = Say("Safety") },
                new Block.Signatures([Say("Made by"), Say("Checked by"), Say("Released by")]),
            ],
            Foot = Foot.Of(run),
        };
    }

    private static string Size(BatchPlan plan) => plan.Size switch
    {
        BatchSize.OfMass mass => plan.Volume is { } volume
            ? Say($"{Figures.Size(mass.Mass)} (about {Figures.Size(volume)})") : Figures.Size(mass.Mass),
        BatchSize.OfVolume volume => Say($"{Figures.Size(volume.Volume)} (about {Figures.Size(plan.Amounts.Total)})"),
        _ => throw new ArgumentOutOfRangeException(nameof(plan), plan.Size, "not a case of the closed set"),
    };

    private static Block.Facts Head(BatchPlan plan)
    {
        var run = plan.Run;
        return new(
        [
            new(Say("Size"), Size(plan)),
            new(Say("Target"), plan.Band is { } band ? AdviceWords.Band(band) : Say("none given")),
            new(Say("Method"), RunFacts.Method(run)),
            new(Say("Reference temperature"), RunFacts.Temperature(run)),
            new(Say("Based on run"), run.Lot is { } lot ? Say($"{RunFacts.Name(run)}, lot {lot}") : RunFacts.Name(run)),
            new(Say("Repeatability"), RunFacts.Percent(run.RepeatabilityInForce)),
            Fact.Blank(Say("Batch no.")),
            Fact.Blank(Say("Date")),
        ]);
    }

    private static Block.Grid Weighing(BatchPlan plan)
    {
        var rows = ImmutableArray.CreateBuilder<GridRow>();
        var amounts = plan.Amounts;
        rows.Add(GridRow.Of(
            Say($"base {plan.Run.Base.Name ?? ""}"), Figures.Grams(amounts.Base, plan.BaseScaleStep),
            Of(amounts.Base, plan.Recipe.Base.Density), "", ""));
        if (amounts.Water > Mass.None)
        {
            rows.Add(GridRow.Of(
                Say("water, with the base"), Figures.Grams(amounts.Water, plan.BaseScaleStep), Of(amounts.Water, Density.Water), "–",
                ""));
        }

        foreach (var amount in amounts.Parts)
        {
            var thickener = amount.Part.Thickener;
            rows.Add(GridRow.Of(
                Say($"thickener {thickener.Name}, at hand"), Figures.Grams(amount.Neat, plan.ScaleStep),
                Of(amount.Neat, thickener.Density), "", ""));
            if (amount.Water > Mass.None)
            {
                rows.Add(GridRow.Of(
                    Say($"water to dilute {thickener.Name} {RunFacts.Dilution(thickener.Dilution)}"),
                    Figures.Grams(amount.Water, plan.ScaleStep),
                    Of(amount.Water, Density.Water), "–", ""));
            }
        }

        rows.Add(GridRow.Of(
            Say("in all"), Figures.Grams(amounts.Total, plan.ScaleStep), Figures.Milliliters(plan.Volume), "–", "–") with
        { IsTotal = true });
        return new(
            [new(Say("material")), .. GridColumn.Numbers("g", "mL"), .. GridColumn.Blank(Say("lot"), Say("weighed, g"))],
            rows.ToImmutable());
    }

    private static string Of(Mass mass, Density? density)
        => density is { } known ? Figures.Milliliters(Volume.FromMilliliters(mass.Grams / known.GramsPerMilliliter)) : "–";

    private static IEnumerable<Block> Colour(BatchPlan plan, ColourYield? colour)
    {
        var counts = Say("It counts as base: it goes in first, in place of the same amount of base, and the base is read with it, "
            + "because colour shifts the curve.");
        if (plan.Volume is not { } volume)
        {
            if (colour is not null)
            {
                yield return new Block.Prose(Say("Colour concentrate is measured by volume, and the base's density is not given: give it "
                    + "with --density G_ML."));
            }

            yield break;
        }

        yield return new Block.Prose(colour is null
            ? Say($"Colour concentrate, if the base has none yet: {Figures.Size(ColourYield.Weak.For(volume))} to "
                + $"{Figures.Size(ColourYield.Strong.For(volume))} (1 volume to 16 or 8 volumes of paint: common practice, no source). "
                + $"{counts}")
            : Say($"Colour concentrate: {Figures.Size(colour.For(volume))} (one volume to {colour.Volumes:0.##} volumes of paint). "
                + $"{counts}"));
    }

    private static string How(BatchPlan plan)
    {
        var stir = plan.Stir is { } time
            ? Say($"Stir for {Shown.Duration(time)} at least, as in the run, and longer in a larger vessel: until top and bottom look "
                + $"alike.")
            : Say("Stir until top and bottom look alike.");
        return Say($"{First(plan)} Read the base, then pour slowly into the moving batch. {stir} Let it stand as the table says, and read: "
            + $"two readings that agree within {RunFacts.Percent(plan.Run.RepeatabilityInForce)} settle a step, if the time between them "
            + $"is at least as long as it had stood before the first.");
    }

    private static string First(BatchPlan plan)
    {
        var first = plan.Steps[0];
        var fraction = Math.Round(first.PouredSoFar.Grams / plan.Amounts.Parts[0].Poured.Grams, 2);
        var usual = fraction < BatchPlan.FirstPart - 0.02
            ? Say($" ({100 * BatchPlan.FirstPart:0} % is usual, but too much here for a lot that is stronger)")
            : "";
        var over = plan.Steps.First(s => s.IsRead).ChanceOver is { } chance
            ? Say($"; the chance that it is already over is {Shown.Chance(chance)}")
            : "";
        var rest = over.Length > 0
            ? Say("The steps that follow are those that advice would take if the batch read as the run did.")
            : Say("The rest follows in equal parts.");
        return Say($"The first addition is {100 * fraction:0} % of the final dose{usual}{over}. {rest}");
    }

    private static Block.Grid Dosing(BatchPlan plan)
    {
        var rows = ImmutableArray.CreateBuilder<GridRow>();
        var seen = plan.BaseOfRun is { } read ? Say($"{Shown.Number(read.MilliPascalSeconds)} in the run") : "";
        rows.Add(GridRow.Of(Say("base"), "–", "–", "–", "", "", "–", seen, "", "", "", ""));
        foreach (var step in plan.Steps)
        {
            var off = step.IsRead ? "" : "–";
            rows.Add(GridRow.Of(
                step.Stage.ToString(Numbers),
                step.Thickener,
                Figures.Grams(step.Poured, plan.ScaleStep),
                Figures.Grams(step.PouredSoFar, plan.ScaleStep),
                Figures.Milliliters(step.Volume),
                Figures.Dose(step.After),
                step.IsRead ? step.Standing is { } standing ? Figures.Seconds(standing) : "" : off,
                !step.IsRead ? off
                    : step.Expected is { } expected ? $"{Shown.Number(expected.Median.MilliPascalSeconds)} ({Shown.Spread(expected)})" : "",
                off, off, off, off));
        }

        var hasVolumes = plan.Steps.Any(s => s.Volume is not null);
        return Without(hasVolumes ? -1 : 4, new(
            [
                new(Say("step")), new(Say("pour")),
                .. GridColumn.Numbers(
                    "g", Say("g so far"), "mL", Say("dose %"), Say("stand s"), Say("expect mPa·s, 9 times in 10")),
                .. GridColumn.Blank(Say("read 1"), Say("read 2"), "°C", "pH"),
            ],
            rows.ToImmutable()));
    }

    private static Block.Grid Without(int column, Block.Grid grid) => column < 0
        ? grid
        : new(grid.Columns.RemoveAt(column), [.. grid.Rows.Select(r => r with { Cells = r.Cells.RemoveAt(column) })]);

    private static ImmutableArray<string> Rules(BatchPlan plan)
    {
        var points = ImmutableArray.CreateBuilder<string>();
        points.Add(Say("In band: stop, whatever is left. Short: the next step. Above what the table expects: this batch is stronger than "
            + "the run. Log the batch as a run of its own, and 'viscolog advise' weighs its readings against the run: follow its grams "
            + "instead of the table's; it also says how much base brings back a batch that is over."));
        points.Add(Say($"Readings more than 10 °C from {plan.Run.ReferenceTemperatureInForce.Celsius:0.#} °C don't count; write the "
            + $"temperature with each."));
        points.Add(Acidity(plan));
        return points.ToImmutable();
    }

    private static string Acidity(BatchPlan plan)
    {
        var seen = plan.AcidityOfRun is var (low, high)
            ? low.Ph == high.Ph
                ? Say($"The run was at pH {low.Ph:0.0}")
                : Say($"The run went from pH {high.Ph:0.0} to {low.Ph:0.0}")
            : Say("The pH of the run was not measured");
        return plan.Recipe.Parts.Any(p => p.Thickener.Chemistry == ThickenerChemistry.AlkaliSwellable)
            ? Say($"{seen}: bring the base to the same pH before any thickener goes in (about 8.5 to 9.5 is usual for an "
                + $"alkali-swellable one; below 7.5 it hardly swells). If it must be raised later, then in small steps: what had not "
                + $"swollen swells all at once.")
            : Say($"{seen}: a batch at another pH may thicken differently.");
    }
}
