using Viscolog.Core.Flow;
using Viscolog.Core.Measuring;

namespace Viscolog.Wording;

/// <summary>What is said of flow curves, in sentences.</summary>
internal static class FlowWords
{
    /// <summary>What a reader must know.</summary>
    public static string Of(FlowWarning warning) => warning switch
    {
        FlowWarning.StressFalls falls => Say($"the stress falls as the rate grows (from about "
            + $"{falls.From.PerSecond:0.###} 1/s on): no liquid in steady flow does that; look for slip at the wall, a sample flung out "
            + $"of the gap or broken down, or a reading taken before it was steady. The laws below describe the numbers, not the material"),
        FlowWarning.FittedToWayDown down => Say($"rates went up and came down: the laws are "
            + $"fitted to the way down, which is closer to a steady state; the loop is {100 * down.Loop.Part:0.#} % of the area under the "
            + $"way up"),
        FlowWarning.FittedToBothWays => Say("rates went up and came down, with too few points on the way down to fit it alone: the laws "
            + "are fitted to both"),
        FlowWarning.NarrowRates => Say("the rates cover less than a factor of ten: laws with different meanings fit equally well; measure "
            + "over a wider range"),
        FlowWarning.TooFewToWeigh => Say("too few points to weigh the laws against each other: read at 6 rates or more"),
        FlowWarning.DoubtfulGeometry doubtful => Doubt(doubtful.Geometry),
        FlowWarning.LowTorques { Low: 1 } low
            => Say($"1 of {low.All} torques is under 10 % of full scale: use a higher speed or a larger spindle there"),
        FlowWarning.LowTorques low
            => Say($"{low.Low} of {low.All} torques are under 10 % of full scale: use a higher speed or a larger spindle there"),
        FlowWarning.FlatTorques => Say("in places the torque hardly rises with speed, as when a paste slips or only a layer of it flows: "
            + "the rate there is uncertain"),
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    /// <summary>Why a law has no fit, and what to do.</summary>
    public static string Of(FlowTrouble trouble) => trouble switch
    {
        FlowTrouble.TooFewPoints few => Say($"{few.Points} points are too few for "
            + $"{few.Parameters} parameters: read at {few.Parameters + 1} rates or more"),
        FlowTrouble.Undetermined => Say("the data do not determine its parameters: read over more decades of rate, or rely on a law "
            + "with fewer parameters"),
        FlowTrouble.NoPlateaus => Say("the data do not show the plateaus: read over more decades of rate"),
        _ => throw new ArgumentOutOfRangeException(nameof(trouble), trouble, "not a case of the closed set"),
    };

    /// <summary>Where the formulas of a viscometer's parts come from.</summary>
    public static string Source(Geometry geometry) => geometry switch
    {
        Geometry.ConcentricCylinder => Say("each law by its own shear across the gap (Krieger and Elrod 1953); end factor of ISO 3219 "
            + "(from memory)"),
        Geometry.ConePlate => Say("cone and plate, ISO 3219 (from memory)"),
        Geometry.ParallelPlates => Say("parallel plates at the rim, corrected after Weissenberg and Rabinowitsch (from memory)"),
        _ => throw new ArgumentOutOfRangeException(nameof(geometry), geometry, "not a case of the closed set"),
    };

    private static string Doubt(Geometry geometry) => geometry switch
    {
        Geometry.ConcentricCylinder => Say("the gap is wider than ISO 3219 allows, and a paste with a yield stress may flow next to the "
            + "bob only: each law is fitted with its own shear across the gap, so the rates are as good as the laws"),
        Geometry.ConePlate => Say("the cone is steeper than 4 degrees: the rate is no longer the same everywhere"),
        Geometry.ParallelPlates => Say("the gap is wide for the plates: the bulge at the rim matters"),
        _ => throw new ArgumentOutOfRangeException(nameof(geometry), geometry, "not a case of the closed set"),
    };
}
