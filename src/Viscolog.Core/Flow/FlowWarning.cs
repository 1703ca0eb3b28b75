using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>What a reader of a flow curve must know. The set of cases is closed.</summary>
public abstract record FlowWarning
{
    private protected FlowWarning()
    {
    }

    /// <summary>The stress falls as the rate grows, as no liquid's does that flows steadily.</summary>
    /// <param name="From">The rate from which on.</param>
    public sealed record StressFalls(ShearRate From) : FlowWarning;

    /// <summary>Rates went up and came down; the laws are fitted to the way down.</summary>
    /// <param name="Loop">The loop.</param>
    public sealed record FittedToWayDown(FlowLoop Loop) : FlowWarning;

    /// <summary>Rates went up and came down; the laws are fitted to both ways.</summary>
    public sealed record FittedToBothWays : FlowWarning;

    /// <summary>The rates cover less than a factor of ten.</summary>
    public sealed record NarrowRates : FlowWarning;

    /// <summary>Too few points to weigh the laws.</summary>
    public sealed record TooFewToWeigh : FlowWarning;

    /// <summary>The parts are outside what their formula is for (see <see cref="Measuring.Geometry.IsDoubtful"/>).</summary>
    /// <param name="Geometry">The parts.</param>
    public sealed record DoubtfulGeometry(Geometry Geometry) : FlowWarning;

    /// <summary>Torques are low (see <see cref="RotationalTorque.Least"/>).</summary>
    /// <param name="Low">How many.</param>
    /// <param name="All">Of how many.</param>
    public sealed record LowTorques(int Low, int All) : FlowWarning;

    /// <summary>The torque hardly rises with the speed at places.</summary>
    public sealed record FlatTorques : FlowWarning;
}
