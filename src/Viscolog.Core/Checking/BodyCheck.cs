using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>A batch's body against its band.</summary>
/// <param name="Value">The body; null where no reading counts.</param>
/// <param name="Band">The band.</param>
/// <param name="Chance">Probability of conformity; null without a value.</param>
/// <param name="Accepted">Measured values that would be accepted at this uncertainty: the band less a guard band at either end; null where none would be.</param>
public sealed record BodyCheck(BatchValue? Value, ViscosityBand Band, Percentage? Chance, ViscosityBand? Accepted)
{
    /// <summary>The guard band at either end, relative; null where nothing would be accepted.</summary>
    public Percentage? GuardBand => Accepted is { } inside ? Percentage.FromFraction(Math.Max(0, Math.Exp(inside.Low.Ln - Band.Low.Ln) - 1)) : null;

    /// <summary>Whether the value lies below the aim.</summary>
    public bool IsBelowAim => Value is { } value && value.Body < Band.Aim;
}
