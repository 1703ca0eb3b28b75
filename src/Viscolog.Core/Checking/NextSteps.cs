using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>Goes from a verdict to what to do.</summary>
internal sealed class NextSteps(BatchCheck check, BatchReadings readings, ImmutableArray<Run> history)
{
    /// <summary>More readings than these nobody takes for a verdict; then something else is better changed (common practice, no
    /// source).</summary>
    private const int MostReadings = 10;

    /// <summary>Decides.</summary>
    public NextStep Decide() => check.Verdict switch
    {
        Verdict.Accept => new NextStep.Release(),
        _ when PhFirst() is { } first => first,
        Verdict.Undecided undecided => Undecided(undecided),
        Verdict.Reject => Correction(),
        var other => throw new ArgumentOutOfRangeException(nameof(check), other, "not a case of the closed set"),
    };

    /// <summary>
    /// An alkali-swellable thickener swells with the pH: below its band the body is short for want of alkali, and thickener poured in now
    /// would be too
    /// much once the pH is right.
    /// </summary>
    private NextStep.AdjustPh? PhFirst()
    {
        if (!check.Run.Thickeners.Any(t => t.Chemistry == ThickenerChemistry.AlkaliSwellable && check.Run.PotNow().In(t.Name) > Mass.None))
        {
            return null;
        }

        var why = new StepReason.SwellsAtPh();
        if (check.Acidity is { } asked)
        {
            return asked.IsTooLow ? new(true, asked.Band, why) : null;
        }

        // Where no pH is asked for, only a short body makes it matter.
        var usual = AcidityCheck.Of([.. readings.OfPot.Select(r => r.Acidity).OfType<Acidity>()], AcidityCheck.UsualForSwelling);
        return check.Body is { Value: not null, IsBelowAim: true } && usual.Chance <= DecisionRule.RejectUpTo
            && usual.IsTooLow ? new(true, usual.Band, why) : null;
    }

    private NextStep Undecided(Verdict.Undecided undecided)
    {
        if (readings.Falls)
        {
            return new NextStep.Rework(new StepReason.LetItRest());
        }

        if (readings.MoreWait is { } more)
        {
            return new NextStep.Wait(more, new StepReason.MayStillBuild());
        }

        if (undecided.MoreReadings is { } count and <= MostReadings)
        {
            return new NextStep.Read(count, new StepReason.Doubtful(undecided.Why));
        }

        if (check.Body is not { Value: { } value } body || check.Verdict is Verdict.Undecided && IsPass(body.Chance))
        {
            return Others();
        }

        // A repeatability that nobody stated can be stated; else what readings make smaller is no help where none would decide.
        var doubt = value.Parts.Where(p => !p.ShrinksWithReadings || undecided.MoreReadings is not null
            || p is UncertaintyPart.Repeatability { Origin: ScatterOrigin.Default }).MaxBy(p => p.Size);
        return Toward(body) ?? new NextStep.Rework(new StepReason.ReadingsDecideNothing(undecided.MoreReadings, doubt));
    }

    private static bool IsPass(Percentage? chance) => chance >= DecisionRule.AcceptFrom;

    /// <summary>
    /// Where doubt can't be read away, a body on the edge of its band is better moved toward the aim, unless no mean would be accepted
    /// there either, however often it is read.
    /// </summary>
    private NextStep? Toward(BodyCheck body)
        => body.IsBelowAim && body.Value!.After(MostReadings).Accepted(body.Band) is not null ? Advised() as NextStep.Correct : null;

    private NextStep Correction()
    {
        if (check.Body is { } body && body.Chance <= DecisionRule.RejectUpTo)
        {
            return Advised();
        }

        return check.Acidity is { Mean: not null } acidity && acidity.Chance <= DecisionRule.RejectUpTo
            ? new NextStep.AdjustPh(acidity.IsTooLow, acidity.Band, new StepReason.BodyGoesWithPh())
            : Others();
    }

    private NextStep Others() => check switch
    {
        { Acidity: { Mean: not null } acidity } when !IsPass(acidity.Chance)
            => new NextStep.AdjustPh(acidity.Mean < Middle(acidity.Band), acidity.Band, new StepReason.BodyGoesWithPh()),
        { StringLength: { Mean: { } mean } strings, Body: { } body } when mean < strings.Band.Low && check.Run.Thickeners.Length > 1
            && Asked(body.Band.Shifted(body.Value?.LnBiasTakenOut ?? 0)).Advice is { Action: BenchAction.Add } advice
                => new NextStep.Correct(advice),
        { StringLength: { Mean: { } mean } strings } when mean < strings.Band.Low
            => new NextStep.Rework(new StepReason.StringTooShort()),
        { StringLength: { Mean: { } mean } strings } when mean > strings.Band.High
            => new NextStep.Rework(new StepReason.StringTooLong()),
        _ => new NextStep.Rework(new StepReason.StringUnsure()),
    };

    private static Acidity Middle(AcidityBand band) => Acidity.FromPh((band.Low.Ph + band.High.Ph) / 2);

    /// <summary>Thickener or base by the same advice as at the bench, with the product's history; the band as this instrument reads
    /// it.</summary>
    private NextStep Advised()
    {
        var (run, body) = (check.Run, check.Body!);
        if (Evidence.MainThickener(run) is null)
        {
            return new NextStep.Rework(new StepReason.NoThickener(body.IsBelowAim));
        }

        var outcome = Asked(body.Band.Shifted(body.Value!.LnBiasTakenOut));
        return outcome.Advice switch
        {
            { Action: BenchAction.Add } advice when body.IsBelowAim => new NextStep.Correct(advice),
            { Action: BenchAction.LetDown } advice when !body.IsBelowAim => new NextStep.Correct(advice),
            { Action: BenchAction.GiveUp } advice => new NextStep.Rework(new StepReason.Advised(advice, body.IsBelowAim)),
            { Action: BenchAction.Measure } advice => new NextStep.Read(1, new StepReason.Advised(advice, body.IsBelowAim)),
            { Action: BenchAction.Wait wait } advice => new NextStep.Wait(wait.More, new StepReason.Advised(advice, body.IsBelowAim)),
            null => new NextStep.Rework(new StepReason.NotAdvised(outcome, body.IsBelowAim)),
            _ => new NextStep.Rework(new StepReason.CurveDisagrees(body.IsBelowAim)),
        };
    }

    /// <summary>The advice for the pot as it is.</summary>
    private StudyOutcome Asked(ViscosityBand band) => Study.Of(new(check.Run) { Band = band, History = history });
}
