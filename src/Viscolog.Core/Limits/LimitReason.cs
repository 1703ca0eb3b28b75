using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Limits;

/// <summary>Why a dose is not to be passed. The set of cases is closed.</summary>
public abstract record LimitReason
{
    private LimitReason()
    {
    }

    /// <summary>The thickener's usual range ends there.</summary>
    public sealed record UsualRange : LimitReason;

    /// <summary>From there on the pot is expected to be too stiff to stir.</summary>
    public sealed record TooStiff : LimitReason;

    /// <summary>The curve flattens from there on.</summary>
    /// <param name="IsBrief">Whether it goes without saying what more would do.</param>
    public sealed record Flattens(bool IsBrief = false) : LimitReason;

    /// <summary>The body may peak near there and fall beyond it.</summary>
    public sealed record MayPeak : LimitReason;

    /// <summary>The body falls beyond there.</summary>
    public sealed record Falls : LimitReason;

    /// <summary>Something was seen to be wrong there.</summary>
    /// <param name="Fault">What.</param>
    public sealed record Seen(ObservedFault Fault) : LimitReason;
}

/// <summary>The dose beyond which more is wrong, and why.</summary>
/// <param name="Dose">The limit.</param>
/// <param name="Why">The reason.</param>
public sealed record DoseLimit(Dose Dose, LimitReason Why);
