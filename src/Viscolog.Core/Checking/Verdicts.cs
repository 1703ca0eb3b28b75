using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>Goes from what was found to a verdict: reject where one thing fails, accept where all pass.</summary>
internal sealed class Verdicts(BatchCheck check, BatchReadings readings)
{
    /// <summary>Readings missing from those that a verdict needs; 0 where none is.</summary>
    public int Missing => check.Body is null
        ? 0 : Math.Max(0, check.Specification.MinimumReadingsInForce - (check.Body.Value?.Readings ?? 0));

    /// <summary>Decides.</summary>
    public Verdict Decide()
    {
        if (readings.Falls)
        {
            return new Verdict.Undecided(null, new Doubt.ReadingsFall());
        }

        if (readings.MoreWait is not null)
        {
            return new Verdict.Undecided(null, new Doubt.NothingSettled());
        }

        if (Missing > 0)
        {
            return new Verdict.Undecided(
                Missing, new Doubt.TooFewReadings(check.Specification.MinimumReadingsInForce, check.Body!.Value?.Readings ?? 0));
        }

        return Failing() is { Length: > 0 } defects
            ? new Verdict.Reject(defects) : (Verdict?)(Unread() ?? Doubted()) ?? new Verdict.Accept();
    }

    private static bool Fails(Percentage? chance) => chance <= DecisionRule.RejectUpTo;

    private static bool Passes(Percentage? chance) => chance >= DecisionRule.AcceptFrom;

    private ImmutableArray<Defect> Failing() =>
    [
        .. Fails(check.Body?.Chance) ? [check.Body!.IsBelowAim ? Defect.BodyShort : Defect.BodyOver] : Array.Empty<Defect>(),
        .. Fails(check.Acidity?.Chance) ? [check.Acidity!.IsTooLow ? Defect.PhLow : Defect.PhHigh] : Array.Empty<Defect>(),
        .. Fails(check.StringLength?.Chance)
            ? [check.StringLength!.Mean < check.StringLength.Band.Low ? Defect.StringShort : Defect.StringLong] : Array.Empty<Defect>(),
    ];

    private Verdict.Undecided? Unread()
        => check.Acidity is { Mean: null } ? new(1, new Doubt.PhNotRead())
            : check.StringLength is { Mean: null } ? new(1, new Doubt.StringNotRead())
            : null;

    private Verdict.Undecided? Doubted() => check switch
    {
        { Body: { Value: { } value } body } when !Passes(body.Chance) => new(
            Conformity.MoreReadings(more => value.After(more).Chance(body.Band)),
            body.Accepted is null ? new Doubt.BodyTooUnsure() : new Doubt.BodyNearLimit()),
        { Acidity: { } acidity } when !Passes(acidity.Chance) => new(null, new Doubt.PhNearLimit()),
        { StringLength: { } strings } when !Passes(strings.Chance) => new(strings.MoreReadings(), new Doubt.StringNearLimit()),
        _ => null,
    };
}
