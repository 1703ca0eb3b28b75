using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>
/// Ever steeper towards a dose m at which the pot would lock up: u = −S·ln(1 − z/m), the form of Krieger and Dougherty (Transactions of the
/// Society of Rheology 3 (1959) 137–152) for crowded suspensions and swollen particles; straight on from 0.97 m.
/// </summary>
internal sealed class CrowdingShape() : Shape(
    "crowding",
    new ShapeParameter("strength", "ln", 1.5, 0.45),
    new ShapeParameter("locking dose", "R", 1.1, 0.3))
{
    /// <summary>Part of the locking dose from which on the curve goes straight on, so that it stays finite.</summary>
    private const double Straight = 0.97;

    /// <inheritdoc/>
    internal override ImmutableArray<double> Potency => [0, -1];

    /// <inheritdoc/>
    internal override double RiseOf(ReadOnlySpan<double> parameters, double z)
    {
        var part = z / parameters[1];
        var curved = Math.Min(part, Straight);
        return parameters[0] * (((part - curved) / (1 - Straight)) - Math.Log(1 - curved));
    }
}
