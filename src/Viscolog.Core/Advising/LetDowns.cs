using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>How much base brings a pot back, or makes room again; all doses fall alike.</summary>
internal sealed class LetDowns(Situation at, DecisionSettings settings)
{
    /// <summary>Base that brings the median of a quantity down to its aim.</summary>
    public Move ToAim(Quantity quantity) => Where(
        doses => at.Median(quantity, doses) <= at.Aim(quantity).Middle,
        new AdviceReason.Over(quantity))
        ?? Move.GiveUp(quantity == Quantity.Body ? Remedy.ThinnerBase : Remedy.LessStringyBase, new AdviceReason.BaseIsOver(quantity));

    /// <summary>The least base after which something holds; null where none is enough.</summary>
    /// <param name="isEnough">Whether it holds at doses.</param>
    /// <param name="why">What it is for.</param>
    public Move? Where(Func<Doses, bool> isEnough, AdviceReason why)
    {
        bool IsEnough(double parts) => isEnough(Doses.FromPercent(at.Now.Body.Percent / (1 + parts), at.Now.Strings.Percent / (1 + parts)));
        if (!IsEnough(settings.MostBase))
        {
            return null;
        }

        var parts = Threshold.Of(0, settings.MostBase, IsEnough, 0, settings.BaseHalvings).After;
        var scale = at.Run.ScaleStepInForce;
        var steps = Math.Max(settings.LeastBaseSteps, Math.Round(parts * at.Pot.Base.Grams / scale.Grams));
        var added = Mass.FromGrams(Math.Round(steps * scale.Grams, 9));
        if (added > at.Pot.Total)
        {
            return Move.GiveUp(Remedy.SplitPot, new AdviceReason.TooMuchBase(added, why));
        }

        if (added == Mass.None)
        {
            return Move.GiveUp(Remedy.WeighFiner, new AdviceReason.BaseTooSmall(scale));
        }

        var after = at.DosesIn(at.Pot.LetDown(added));
        return new(new BenchAction.LetDown(added, after.Body), why) { After = after };
    }
}
