using System.Collections.Immutable;
using Viscolog.Core.Limits;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Advice for a pot: what to do, what to expect, the risk, and why.</summary>
/// <param name="Action">What to do now.</param>
/// <param name="Why">Why.</param>
public sealed record Advice(BenchAction Action, AdviceReason Why)
{
    /// <summary>What is brought into its band, the body first.</summary>
    public required ImmutableArray<AdvisedQuantity> Quantities { get; init; }

    /// <summary>What can be dosed; the thickener that the advice is about first.</summary>
    public required ImmutableArray<AdvisedThickener> Thickeners { get; init; }

    /// <summary>Chance that all quantities are in band: after the action where it changes the pot, else now.</summary>
    public required Percentage ChanceAllInBand { get; init; }

    /// <summary>What the addition that was asked about would bring; null where none was, or where nothing has been read.</summary>
    public WhatIf? WhatIf { get; init; }

    /// <summary>What the reader must know.</summary>
    public ImmutableArray<AdviceWarning> Warnings { get; init; } = [];

    /// <summary>Safety at the bench.</summary>
    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>The body, which every advice is about.</summary>
    public AdvisedQuantity.OfBody Body => (AdvisedQuantity.OfBody)Quantities[0];

    /// <summary>The string; null where the advice is about the body alone.</summary>
    public AdvisedQuantity.OfString? StringLength => Quantities.OfType<AdvisedQuantity.OfString>().FirstOrDefault();

    /// <summary>The thickener that it is about.</summary>
    public AdvisedThickener Thickener => Thickeners[0];

    /// <summary>Chance that one of the quantities is over its band; given the readings they are independent.</summary>
    public Percentage ChanceAnyOver => Percentage.FromFraction(1 - Quantities.Aggregate(1.0, (none, q)
        => none * (1 - q.ChanceOver.Fraction)));

    /// <summary>Whether every quantity has been read.</summary>
    public bool IsAllRead => Quantities.All(q => q.IsRead);
}

/// <summary>A quantity that is brought into its band. The set of cases is closed.</summary>
public abstract record AdvisedQuantity
{
    private protected AdvisedQuantity()
    {
    }

    /// <summary>Chance that it is in band: after the action where it changes the pot, else now.</summary>
    public required Percentage ChanceInBand { get; init; }

    /// <summary>Chance that it is over the band, likewise.</summary>
    public required Percentage ChanceOver { get; init; }

    /// <summary>Whether it has been read in this run.</summary>
    public abstract bool IsRead { get; }

    /// <summary>The settled body.</summary>
    /// <param name="Band">The band aimed at.</param>
    /// <param name="Now">The body now; null before any reading.</param>
    /// <param name="Expected">The body that the action leads to; null where the action leaves the pot as it is.</param>
    public sealed record OfBody(ViscosityBand Band, Estimate? Now, Estimate? Expected) : AdvisedQuantity
    {
        /// <inheritdoc/>
        public override bool IsRead => Now is not null;
    }

    /// <summary>The length of string.</summary>
    /// <param name="Band">The lengths wanted.</param>
    /// <param name="Now">The string now; null before any reading of it.</param>
    /// <param name="Expected">The string that the action leads to; null where the action leaves the pot as it is.</param>
    public sealed record OfString(StringBand Band, LengthEstimate? Now, LengthEstimate? Expected) : AdvisedQuantity
    {
        /// <inheritdoc/>
        public override bool IsRead => Now is not null;
    }
}

/// <summary>A thickener that can be dosed.</summary>
/// <param name="Name">Its name.</param>
/// <param name="DoseNow">Its dose now.</param>
/// <param name="ShareNow">Its share of everything in the pot now.</param>
/// <param name="Limit">Its dose limit and the reason.</param>
public sealed record AdvisedThickener(string Name, Dose DoseNow, Percentage ShareNow, DoseLimit Limit)
{
    /// <summary>What is still to come of it to the end, this addition included; null where nothing is, or where no plan is made.</summary>
    public PlannedDose? Planned { get; init; }
}

/// <summary>What is still to come of one thickener, in outline.</summary>
/// <param name="About">About how much more.</param>
/// <param name="Additions">In about how many additions.</param>
public sealed record PlannedDose(Dose About, int Additions);
