using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Reports;
using Viscolog.RunFiles;
using Viscolog.Wording;

namespace Viscolog.Labels;

/// <summary>What stands on a label. All text in it is plain; whoever writes a format escapes it.</summary>
/// <param name="Kind">Whether it is a pot's or a batch's.</param>
/// <param name="Name">The run's name.</param>
/// <param name="Code">What its QR code says.</param>
internal sealed record Label(string Kind, string Name, string Code)
{
    /// <summary>What is known, the most needed first; no text where somebody is to write it by hand.</summary>
    public ImmutableArray<Fact> Facts { get; init; } = [];

    /// <summary>The usual cautions.</summary>
    public string Cautions { get; init; } = "";

    /// <summary>The label of a pot at work: what is in it, and what it last read.</summary>
    /// <param name="file">The run.</param>
    /// <param name="issued">Today.</param>
    public static Label OfPot(RunFile file, DateOnly issued) => Of(Say("Pot", "label"), file, issued, LastRead(file.Run));

    /// <summary>The label of a batch that was checked: its value and the verdict.</summary>
    /// <param name="file">The batch as it was checked.</param>
    /// <param name="check">The check.</param>
    /// <param name="issued">Today.</param>
    public static Label OfBatch(RunFile file, BatchCheck check, DateOnly issued) => Of(Say("Batch", "label"), file, issued, Checked(check));

    private static Label Of(string kind, RunFile file, DateOnly issued, IEnumerable<Fact?> values)
    {
        var run = file.Run;
        var pot = run.PotNow();
        Thickener[] there = [.. run.Thickeners.Where(t => pot.In(t.Name) > Mass.None)];
        var doses = there.Select((t, i) => new Fact(i == 0 ? Say("Dose", "label") : "", $"{Shown.Dose(pot.DoseOf(t.Name))} {t.Name}"));
        Fact?[] facts =
        [
            .. values,
            .. there.Length == 0 ? [new(Say("Dose", "label"), Say("none yet", "dose"))] : doses,
            new(Say("Lot", "label"), run.Lot is { } lot ? lot + (run.Base.Name is { } name ? $" ({name})" : "") : null),
            RunFacts.Days(run) is { } days ? new(Say("Made", "label"), days) : new(Say("Label", "label"), Shown.Day(issued)),
        ];
        return new(kind, RunFacts.Name(run), IdentityCode.Text(file.Id, RunFacts.Name(run)))
        {
            Facts = [.. facts.OfType<Fact>()],
            Cautions = CautionWords.Brief(Core.Limits.Cautions.For(there)),
        };
    }

    private static Fact[] LastRead(Run run)
    {
        var last = run.Entries.OfType<Entry.Measured>().LastOrDefault(m => m.Counts && m.Reading.Value is not null)?.Reading;
        if (last is not { Value: { } value } reading)
        {
            return [Fact.Blank(Say("Read", "label"))];
        }

        var unit = value.Speed is null ? " " + run.MethodInForce.Unit : "";
        return
        [
            new(Say("Read", "label"), ReadingWords.Exact(value) + unit),
            reading.Temperature is { } known
                ? new(Say("at", "label"), $"{Figures.OneDecimal(known.Celsius)} °C, {run.MethodInForce.Id}")
                : new(Say("Method"), run.MethodInForce.Id),
        ];
    }

    private static IEnumerable<Fact> Checked(BatchCheck check)
    {
        yield return new(Say("Verdict", "label"), CheckWords.Passed(check.Verdict));
        if (check.Body is { Value: { } value })
        {
            var method = check.Condition is { } condition ? MethodWords.Of(condition) : check.Run.MethodInForce.Id;
            yield return new(Say("Body", "label"), CheckWords.Expanded(value));
            yield return new(Say("at", "label"), $"{RunFacts.Temperature(check.Run)}, {method}; k = {CheckWords.CoverageFactor(value)}");
        }
    }
}
