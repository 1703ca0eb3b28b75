using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>How the next addition is chosen, and what is to be done where none is to be made: where one thickener and two differ.</summary>
internal abstract class AdditionPolicy(Situation at, DecisionSettings settings)
{
    /// <summary>Where the pot stands.</summary>
    protected Situation At { get; } = at;

    /// <summary>The thresholds in force.</summary>
    protected DecisionSettings Settings { get; } = settings;

    /// <summary>Whether the target counts as out of reach, so that no waiting brings it nearer.</summary>
    public virtual bool IsHopeless => false;

    /// <summary>The best addition; null where none keeps within the risk.</summary>
    public abstract Addition? Choose();

    /// <summary>What is to be done in place of an addition; null where it is to be made.</summary>
    public abstract Move? InsteadOf(Addition? addition);

    /// <summary>What is to be done where nothing is left to add or to read.</summary>
    public abstract Move Stuck();

    /// <summary>What is to be done where an addition is less than the scale can weigh; null for a finer scale.</summary>
    public virtual Move? InsteadOfTooSmall() => null;

    /// <summary>Why an addition is the one it is.</summary>
    public abstract AdviceReason Why(Addition addition);

    /// <summary>What is still to come of each thickener, in the order of the quantities; empty for no plan.</summary>
    /// <param name="addition">The next addition.</param>
    /// <param name="after">The dose after it, in %.</param>
    public virtual ImmutableArray<PlannedDose?> Plan(Addition addition, double after) => [];

    /// <summary>One more reading of whatever is less sure; null where all was read often enough.</summary>
    public Move? Repeat()
    {
        var chances = At.At(At.Now);
        var stringFirst = chances.Length > 1 && chances[(int)Quantity.Stringiness].InBand <= chances[(int)Quantity.Body].InBand;
        if (stringFirst && !IsReadOften(Quantity.Stringiness))
        {
            return Move.ReadString(new AdviceReason.StringDoubtful(At.StringRepeatability));
        }

        if (!IsReadOften(Quantity.Body))
        {
            return Move.ReadBody(new AdviceReason.BodyDoubtful());
        }

        return chances.Length == 1 || IsReadOften(Quantity.Stringiness)
            ? null
            : Move.ReadString(new AdviceReason.StringUntold());
    }

    /// <summary>Whether no further reading of a quantity is asked for in this step.</summary>
    public bool IsReadOften(Quantity quantity)
        => At.ReadingsOf(quantity) >= (quantity == Quantity.Body ? Settings.EnoughBodies : DecisionSettings.EnoughStrings);
}

/// <summary>An addition that a policy chose.</summary>
/// <param name="Quantity">The quantity whose thickener goes in.</param>
/// <param name="DosePercent">The dose to go to, in %.</param>
/// <param name="BestChance">The greatest chance among the doses allowed that all is in band, as a fraction.</param>
/// <param name="Bound">What kept it from being larger.</param>
internal sealed record Addition(Quantity Quantity, double DosePercent, double BestChance, ChoiceBound Bound);

/// <summary>The thresholds of a decision that were set apart for pots of one thickener and of two.</summary>
internal sealed record DecisionSettings
{
    /// <summary>Readings of string in one step after which no further one is asked for.</summary>
    public const int EnoughStrings = 6;

    /// <summary>Chance that all is in band from which on it is time to stop.</summary>
    public required double StopChance { get; init; }

    /// <summary>Chance that a quantity is over from which on a pot that still builds counts as over.</summary>
    public required double SurelyOver { get; init; }

    /// <summary>Readings of body in one step after which no further one is asked for.</summary>
    public required int EnoughBodies { get; init; }

    /// <summary>Chance that all is in band from which on an addition has to make it likelier.</summary>
    public required double NoBetterFrom { get; init; }

    /// <summary>Base that is never exceeded, over the base now in the pot.</summary>
    public required double MostBase { get; init; }

    /// <summary>Halvings that find the base to add.</summary>
    public required int BaseHalvings { get; init; }

    /// <summary>Steps of the scale that are added at the least where base goes in.</summary>
    public required int LeastBaseSteps { get; init; }

    /// <summary>When a further reading goes before anything else.</summary>
    public ImmutableArray<SecondLook> SecondLooks { get; init; } = [];

    /// <summary>For a pot of one thickener.</summary>
    public static DecisionSettings One { get; } = new()
    {
        StopChance = IncrementPolicy.StopChance,
        SurelyOver = 0.975,
        EnoughBodies = 4,
        NoBetterFrom = 0.5,
        MostBase = 1e6,
        BaseHalvings = 60,
        LeastBaseSteps = 0,
        SecondLooks =
        [
            new(IncrementPolicy.StopChance, 0.975, 2, new AdviceReason.InBandOnOneReading()),
            new(0.5, IncrementPolicy.StopChance, 4, new AdviceReason.ProbablyInBand()),
            new(0.2, IncrementPolicy.StopChance, 2, new AdviceReason.MaybeInBand()),
        ],
    };

    /// <summary>For a pot of two thickeners.</summary>
    public static DecisionSettings Two { get; } = new()
    {
        StopChance = 0.72,
        SurelyOver = 0.9,
        EnoughBodies = 3,
        NoBetterFrom = 0.4,
        MostBase = 9,
        BaseHalvings = 14,
        LeastBaseSteps = 1,
    };
}

/// <summary>A reading that is cheaper than a dose that may not be needed.</summary>
/// <param name="From">Chance that all is in band from which on it is asked for.</param>
/// <param name="To">Chance below which it is.</param>
/// <param name="Readings">Readings of the step from which on it is not.</param>
/// <param name="Why">Why.</param>
internal sealed record SecondLook(double From, double To, int Readings, AdviceReason Why);
