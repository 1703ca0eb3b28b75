using System.Collections.Immutable;
using Viscolog.Core.Limits;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Why something is advised. The set of cases is closed.</summary>
public abstract record AdviceReason
{
    private protected AdviceReason()
    {
    }

    /// <summary>The body was read too far from the reference temperature.</summary>
    /// <param name="Reference">The reference temperature.</param>
    public sealed record TooFarFromReference(Temperature Reference) : AdviceReason;

    /// <summary>The body has not been read in this run.</summary>
    public sealed record NothingRead : AdviceReason;

    /// <summary>The body has not been read since the pot was last changed.</summary>
    public sealed record NotReadSinceChange : AdviceReason;

    /// <summary>The string has not been read since the pot was last changed.</summary>
    /// <param name="Ever">Whether it was read before that.</param>
    public sealed record StringNotRead(bool Ever) : AdviceReason;

    /// <summary>An alkali-swellable thickener does not swell at the pH read.</summary>
    /// <param name="Ph">The pH.</param>
    public sealed record LowPh(double Ph) : AdviceReason;

    /// <summary>The readings of the step fall over time.</summary>
    public sealed record Falls : AdviceReason;

    /// <summary>The last reading contradicts the others.</summary>
    /// <param name="What">How.</param>
    public sealed record Contradicted(Contradiction What) : AdviceReason;

    /// <summary>The pot still builds.</summary>
    /// <param name="ToCome">The rise of the body still expected, as a part of it.</param>
    /// <param name="Repeatability">The repeatability of the body.</param>
    public sealed record StillBuilds(double ToCome, Percentage Repeatability) : AdviceReason;

    /// <summary>In band on a single reading.</summary>
    public sealed record InBandOnOneReading : AdviceReason;

    /// <summary>Probably in band, but the readings can't tell well enough.</summary>
    public sealed record ProbablyInBand : AdviceReason;

    /// <summary>One reading can't tell whether it is in band already.</summary>
    public sealed record MaybeInBand : AdviceReason;

    /// <summary>All is in band.</summary>
    public sealed record InBand : AdviceReason;

    /// <summary>More likely in band than not, and no addition would make it likelier.</summary>
    public sealed record LikelyInBand : AdviceReason;

    /// <summary>The pot may be over, so nothing goes in before one more reading.</summary>
    public sealed record MaybeOver : AdviceReason;

    /// <summary>One more reading of the body decides.</summary>
    public sealed record BodyDoubtful : AdviceReason;

    /// <summary>One more reading of the string decides.</summary>
    /// <param name="Repeatability">The repeatability of the string.</param>
    public sealed record StringDoubtful(Percentage Repeatability) : AdviceReason;

    /// <summary>The string can't be told well enough from its readings.</summary>
    public sealed record StringUntold : AdviceReason;

    /// <summary>One more reading of the string frees a larger addition.</summary>
    /// <param name="Repeatability">The repeatability of the string.</param>
    public sealed record StringKeepsAdditionSmall(Percentage Repeatability) : AdviceReason;

    /// <summary>One more reading of the string before base goes in: the body may pass its band before the string arrives.</summary>
    public sealed record BodyMayPass : AdviceReason;

    /// <summary>A quantity is over its band.</summary>
    /// <param name="Quantity">Which.</param>
    public sealed record Over(Quantity Quantity) : AdviceReason;

    /// <summary>The body would pass its band before the string arrives.</summary>
    /// <param name="StillWanted">What the string still wants of its thickener.</param>
    /// <param name="Thickener">That thickener.</param>
    public sealed record BodyWouldPass(Dose StillWanted, string Thickener) : AdviceReason;

    /// <summary>What the body still wants may carry the string over.</summary>
    /// <param name="StillWanted">What the body still wants of its thickener.</param>
    /// <param name="Thickener">That thickener.</param>
    public sealed record StringWouldPass(Dose StillWanted, string Thickener) : AdviceReason;

    /// <summary>A quantity is over, and the base alone is expected to be above its aim.</summary>
    /// <param name="Quantity">Which.</param>
    public sealed record BaseIsOver(Quantity Quantity) : AdviceReason;

    /// <summary>Letting down takes more base than the pot holds.</summary>
    /// <param name="Base">How much it takes.</param>
    /// <param name="Why">What it is for.</param>
    public sealed record TooMuchBase(Mass Base, AdviceReason Why) : AdviceReason;

    /// <summary>The base to add is less than the scale can weigh.</summary>
    /// <param name="Step">The scale's step.</param>
    public sealed record BaseTooSmall(Mass Step) : AdviceReason;

    /// <summary>The increment is less than the scale can weigh.</summary>
    /// <param name="Step">The scale's step.</param>
    public sealed record IncrementTooSmall(Mass Step) : AdviceReason;

    /// <summary>The dose limit stands in the way of the band.</summary>
    /// <param name="Limit">The limit.</param>
    public sealed record LimitInTheWay(DoseLimit Limit) : AdviceReason;

    /// <summary>The band is out of reach within the dose limit.</summary>
    /// <param name="Thickener">The thickener.</param>
    public sealed record OutOfReach(string Thickener) : AdviceReason;

    /// <summary>The string is out of reach within the dose limit of its thickener.</summary>
    /// <param name="Thickener">That thickener.</param>
    /// <param name="Longest">The string expected there.</param>
    public sealed record StringOutOfReach(string Thickener, Length Longest) : AdviceReason;

    /// <summary>The string's thickener brings the body over before the string arrives.</summary>
    /// <param name="StringDose">What the string wants.</param>
    /// <param name="Body">The body there.</param>
    /// <param name="Reached">The string with the body in band.</param>
    /// <param name="Thickeners">The thickener of the body and that of the string.</param>
    public sealed record NotBoth(Dose StringDose, Viscosity Body, Length Reached, (string Body, string Strings) Thickeners) : AdviceReason;

    /// <summary>The body is out of reach within the dose limits.</summary>
    /// <param name="Thickener">The thickener that makes it.</param>
    /// <param name="Stiffest">The body expected there.</param>
    public sealed record BodyOutOfReach(string Thickener, Viscosity Stiffest) : AdviceReason;

    /// <summary>No addition carries a small enough chance of going over.</summary>
    public sealed record NothingSafe : AdviceReason;

    /// <summary>An addition of the only thickener.</summary>
    /// <param name="Bound">What keeps it from being larger.</param>
    /// <param name="Risk">The chance of going over that it may carry.</param>
    /// <param name="Limit">The dose limit.</param>
    public sealed record Chosen(ChoiceBound Bound, Percentage Risk, DoseLimit Limit) : AdviceReason
    {
        /// <summary>Whether it goes further at once than a pot without earlier runs may.</summary>
        public bool IsOnKnownGround { get; init; }

        /// <summary>Doses at which the body was read where they are too few to trust the slope; null where they are enough.</summary>
        public int? FewDoses { get; init; }

        /// <summary>Earlier runs that help.</summary>
        public int EarlierRuns { get; init; }

        /// <summary>Whether several shapes of curve still fit.</summary>
        public bool IsShapeOpen { get; init; }
    }

    /// <summary>A quantity falls as its thickener goes in.</summary>
    /// <param name="Quantity">The quantity.</param>
    /// <param name="Thickener">The thickener.</param>
    /// <param name="Values">What it was at the last doses, in order: mPa·s or mm.</param>
    public sealed record FallsWithDose(Quantity Quantity, string Thickener, ImmutableArray<double> Values) : AdviceReason;

    /// <summary>Lumps were seen in the last reading; stirring may take them out.</summary>
    public sealed record LumpsSeen : AdviceReason;

    /// <summary>The band is narrower than the method can tell.</summary>
    /// <param name="HalfWidth">Half of the band's width, in proportion.</param>
    /// <param name="Repeatability">What one reading scatters by.</param>
    public sealed record BandTooNarrow(Percentage HalfWidth, Percentage Repeatability) : AdviceReason;

    /// <summary>An addition of one of two thickeners.</summary>
    /// <param name="Bound">What keeps it from being larger.</param>
    /// <param name="Quantity">The quantity whose thickener it is.</param>
    /// <param name="Risk">The chance of going over that it may carry.</param>
    /// <param name="Thickeners">The thickener that goes in and the other.</param>
    public sealed record ChosenOfTwo(
        ChoiceBound Bound, Quantity Quantity, Percentage Risk, (string This, string Other) Thickeners) : AdviceReason
    {
        /// <summary>Whether the string goes first because the body thickener is still to come.</summary>
        public bool IsStringFirst { get; init; }
    }
}

/// <summary>How the last reading contradicts the others. The set of cases is closed.</summary>
public abstract record Contradiction
{
    private protected Contradiction()
    {
    }

    /// <summary>The last reading over what it contradicts.</summary>
    public required double Ratio { get; init; }

    /// <summary>What was perhaps written down wrongly.</summary>
    public Blunder Blunder => Blunders.Of(Ratio);

    /// <summary>It lies off what the others suggest.</summary>
    public sealed record Unexpected : Contradiction;

    /// <summary>It fell though thickener went in.</summary>
    public sealed record Fell : Contradiction;

    /// <summary>It rose by more than so small an addition brings.</summary>
    public sealed record Jumped : Contradiction;
}

/// <summary>How a value is written down wrongly.</summary>
public enum Blunder
{
    /// <summary>In no way that the value itself shows.</summary>
    None,

    /// <summary>With a digit too many.</summary>
    DigitTooMany,

    /// <summary>With a digit too few.</summary>
    DigitTooFew,

    /// <summary>In a unit a thousand times smaller, or its figure in one a thousand times larger: Pa·s and mPa·s.</summary>
    OtherUnit,
}

/// <summary>Tells blunders from how far off a value is.</summary>
public static class Blunders
{
    /// <summary>Readings scatter and so does what is expected: a decade counts from 0.8 to 1.25 of it (a rule of this project).</summary>
    private const double Decade = 0.1;

    private const double ThreeDecades = 0.2;

    /// <summary>The likeliest blunder behind a ratio.</summary>
    /// <param name="ratio">The value over what was expected, above 0.</param>
    public static Blunder Of(double ratio) => Math.Log10(ratio) switch
    {
        >= 1 - Decade and <= 1 + Decade => Blunder.DigitTooMany,
        >= -1 - Decade and <= -1 + Decade => Blunder.DigitTooFew,
        >= 3 - ThreeDecades and <= 3 + ThreeDecades or >= -3 - ThreeDecades and <= -3 + ThreeDecades => Blunder.OtherUnit,
        _ => Blunder.None,
    };
}

/// <summary>What to change where the target can't be had as things stand.</summary>
public enum Remedy
{
    /// <summary>Raise the pH.</summary>
    RaisePh,

    /// <summary>A thinner base.</summary>
    ThinnerBase,

    /// <summary>A base that draws a shorter string.</summary>
    LessStringyBase,

    /// <summary>Let down a part of the pot.</summary>
    SplitPot,

    /// <summary>A finer scale, or a dilution.</summary>
    WeighFiner,

    /// <summary>Find out why the thickener does the opposite of what it is for.</summary>
    FindCause,

    /// <summary>A wider band, or a method that scatters less.</summary>
    WiderBand,

    /// <summary>Another target or other materials.</summary>
    AnotherTarget,

    /// <summary>One of the two quantities alone.</summary>
    OneOfTwo,

    /// <summary>Another balance of the two quantities.</summary>
    Trade,
}

/// <summary>What the reader of advice must know. The set of cases is closed.</summary>
public abstract record AdviceWarning
{
    private protected AdviceWarning()
    {
    }

    /// <summary>Something about the run's evidence.</summary>
    /// <param name="Warning">What.</param>
    public sealed record OfEvidence(EvidenceWarning Warning) : AdviceWarning;

    /// <summary>The thickener has hardly thickened so far.</summary>
    public sealed record HardlyThickened : AdviceWarning;

    /// <summary>The pot is unlike the earlier runs.</summary>
    /// <param name="IsSure">Whether they count for nothing on that account.</param>
    public sealed record UnlikeHistory(bool IsSure) : AdviceWarning;

    /// <summary>No earlier run bears on this one.</summary>
    /// <param name="Thickener">The thickener.</param>
    public sealed record HistoryLeftAside(string Thickener) : AdviceWarning;

    /// <summary>The increment is but few steps of the scale.</summary>
    public sealed record FewScaleSteps : AdviceWarning;

    /// <summary>No pH was ever read, and the thickener swells at the right pH only.</summary>
    /// <param name="Thickener">The thickener.</param>
    public sealed record PhNotRead(string Thickener) : AdviceWarning;

    /// <summary>The addition is a thin stock whose water thins the pot.</summary>
    /// <param name="Water">Water in it.</param>
    /// <param name="Pot">What is in the pot now.</param>
    public sealed record StockWater(Mass Water, Mass Pot) : AdviceWarning;

    /// <summary>The last step has gone on rising for hours.</summary>
    /// <param name="Stood">How long it has stood.</param>
    /// <param name="Rise">Its rise over the second half of that time, in proportion.</param>
    public sealed record RisesWithoutEnd(TimeSpan Stood, Percentage Rise) : AdviceWarning;
}
