using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// How the time that a cup takes to run out tells a kinematic viscosity: ν = a·(t − t₀) − b/t, t in s, ν in mm²/s.
/// </summary>
public sealed record CupEquation
{
    private readonly double _slope;
    private readonly double _dead;
    private readonly double _kinetic;

    internal CupEquation(
        string id,
        string number,
        CupSeries series,
        (double Slope, double Dead, double Kinetic) factors,
        (double Least, double Most) seconds)
    {
        (Id, Number, Series) = (id, number, series);
        (_slope, _dead, _kinetic) = factors;
        (Least, Most) = (TimeSpan.FromSeconds(seconds.Least), TimeSpan.FromSeconds(seconds.Most));
    }

    /// <summary>The id of the cup's method.</summary>
    public string Id { get; }

    /// <summary>What the cup is known by in its series: its number, or the width of its hole in mm.</summary>
    public string Number { get; }

    /// <summary>The set of cups it belongs to.</summary>
    public CupSeries Series { get; }

    /// <summary>The shortest time that may be trusted.</summary>
    public TimeSpan Least { get; }

    /// <summary>The longest time that may be trusted.</summary>
    public TimeSpan Most { get; }

    /// <summary>Whether its equation was checked against values published apart from it.</summary>
    public bool IsChecked { get; internal init; } = true;

    /// <summary>Radius of the orifice in mm where the cup's mark states it; null elsewhere.</summary>
    internal double? OrificeRadius { get; init; }

    /// <summary>The kinematic viscosity; null where the equation gives none above 0. The time limits are not looked at.</summary>
    /// <param name="time">Above 0.</param>
    public KinematicViscosity? At(TimeSpan time)
    {
        var value = Value(time.TotalSeconds);
        return value > 0 && double.IsFinite(value) ? KinematicViscosity.FromSquareMillimetersPerSecond(value) : null;
    }

    /// <summary>The time that a liquid takes: the inverse of <see cref="At"/>.</summary>
    public TimeSpan TimeFor(KinematicViscosity viscosity)
    {
        var v = viscosity.SquareMillimetersPerSecond + (_slope * _dead);
        return TimeSpan.FromSeconds(Math.Min(1e9, (v + Math.Sqrt((v * v) + (4 * _slope * _kinetic))) / (2 * _slope)));
    }

    /// <summary>Whether a time lies within the limits.</summary>
    public bool Allows(TimeSpan time) => time >= Least && time <= Most;

    /// <summary>The middle of the limits, on a scale of ln time.</summary>
    internal TimeSpan Middle => TimeSpan.FromSeconds(Math.Sqrt(Least.TotalSeconds * Most.TotalSeconds));

    /// <summary>How far a time lies from the middle of the limits, on a scale of ln time.</summary>
    internal double OffMiddle(TimeSpan time) => Math.Abs(Math.Log(time / Middle));

    /// <summary>
    /// d ln ν/d ln t: so many per cent of viscosity go with 1 % of time. Over 3 where a time is short and t₀ long.
    /// </summary>
    internal double LnSlope(TimeSpan time)
        => ((_slope * time.TotalSeconds) + (_kinetic / time.TotalSeconds)) / Value(time.TotalSeconds);

    private double Value(double seconds) => (_slope * (seconds - _dead)) - (_kinetic / seconds);
}
