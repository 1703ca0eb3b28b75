using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>A rheology modifier as supplied.</summary>
/// <param name="Name">Its name in the run; not empty.</param>
public sealed record Thickener(string Name)
{
    /// <summary>What makes it thicken.</summary>
    public ThickenerChemistry Chemistry { get; init; }

    private readonly DoseRange? _stated;

    /// <summary>
    /// The supplier's usual range of doses; where none is stated 1 to 5 %, or as much active matter as that where the active matter is
    /// stated (common practice, no source).
    /// </summary>
    public DoseRange UsualRange
    {
        get => _stated ?? DoseRange.Assumed(Active);
        init => _stated = value;
    }

    /// <summary>Whether the range is the supplier's.</summary>
    public bool IsRangeStated => _stated is not null;

    /// <summary>Active matter in the thickener as supplied.</summary>
    public Percentage? Active { get; init; }

    /// <summary>Its density as supplied.</summary>
    public Density? Density { get; init; }

    /// <summary>Its price for 1 kg as supplied, in the user's currency.</summary>
    public decimal? PricePerKilogram { get; init; }

    /// <summary>Names that it had in the run before, under which it may stand in entries.</summary>
    public ImmutableArray<string> Formerly { get; init; } = [];

    /// <summary>How it is cut with water before it is poured.</summary>
    public PreDilution Dilution { get; init; } = PreDilution.None;

    /// <summary>What is poured to bring in so much thickener.</summary>
    public Mass PouredFor(Mass thickener) => Mass.FromGrams(thickener.Grams / Dilution.ThickenerFraction);
}

/// <summary>What makes a thickener thicken.</summary>
public enum ThickenerChemistry
{
    /// <summary>None of the others, or not stated.</summary>
    Other,

    /// <summary>Swells when the acid groups on it are neutralised; needs the right pH.</summary>
    AlkaliSwellable,

    /// <summary>Links binder particles through water-shy ends; brings string and pull.</summary>
    Associative,

    /// <summary>A cellulose ether.</summary>
    Cellulosic,

    /// <summary>A swelling clay.</summary>
    Clay,
}
