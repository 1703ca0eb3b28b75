using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>Speeds and torques of a rotational viscometer, and what they are sheared between: from them to a flow curve.</summary>
/// <param name="Geometry">The parts.</param>
/// <param name="FullScale">Torque at 100 %.</param>
/// <param name="Readings">In the order read.</param>
public sealed record TorqueSeries(Geometry Geometry, Torque FullScale, ImmutableArray<TorqueReading> Readings)
{
    /// <summary>The least index that is taken for the material's; a flatter torque means outlier or a yielding layer.</summary>
    private const double LeastIndex = 0.05;

    /// <summary>What a reader must know.</summary>
    public ImmutableArray<FlowWarning> Warnings
    {
        get
        {
            var low = Readings.Count(r => r.OfFullScale < RotationalTorque.Least);
            FlowWarning?[] all =
            [
                Geometry.IsDoubtful ? new FlowWarning.DoubtfulGeometry(Geometry) : null,
                low > 0 ? new FlowWarning.LowTorques(low, Readings.Length) : null,
                IsFlat ? new FlowWarning.FlatTorques() : null,
            ];
            return [.. all.OfType<FlowWarning>()];
        }
    }

    /// <summary>
    /// The points at first sight: each reading's rate (and, between plates, stress) is that for a power law with the local slope d ln
    /// torque/d ln speed, of a parabola through ln torque over ln speed from five speeds on, of a straight line below. Between cylinders
    /// <see cref="FlowCurve"/> works the rates out anew by the laws that it fits.
    /// </summary>
    public ImmutableArray<FlowPoint> ToPoints()
    {
        var indices = Indices();
        return [.. Readings.Select((r, i) =>
        {
            var torque = Torque.FromNewtonMeters(FullScale.NewtonMeters * r.OfFullScale.Fraction);
            var speed = 2 * Math.PI * r.RevolutionsPerMinute / 60;
            var (rate, stress) = Geometry.At(torque, speed, indices[i]);
            return new FlowPoint(rate, stress) { Turning = speed };
        })];
    }

    /// <summary>The gap that laws are fitted through; null where rates hold for any law, or where the torque says nothing of one.</summary>
    internal GapProfile? Gap => Geometry is Geometry.ConcentricCylinder cylinder ? new(cylinder.Ratio) : null;

    /// <summary>Whether the torque hardly rises with the speed at places.</summary>
    private bool IsFlat => Indices().Any(n => n <= LeastIndex);

    private double[] Indices()
    {
        double[] x = [.. Readings.Select(r => Math.Log(r.RevolutionsPerMinute))];
        double[] y = [.. Readings.Select(r => Math.Log(r.OfFullScale.Percent))];
        var speeds = x.Distinct().Count();
        if (speeds < 2)
        {
            return [.. x.Select(_ => 1.0)];
        }

        var c = MathNet.Numerics.Fit.Polynomial(x, y, speeds >= 5 ? 2 : 1);
        return [.. x.Select(v => Math.Max(LeastIndex, c[1] + (c.Length > 2 ? 2 * c[2] * v : 0)))];
    }
}

/// <summary>One reading of a rotational viscometer on the way to a flow curve.</summary>
/// <param name="RevolutionsPerMinute">Speed in 1/min; above 0.</param>
/// <param name="OfFullScale">Torque of full scale; above 0.</param>
public sealed record TorqueReading(double RevolutionsPerMinute, Percentage OfFullScale);

/// <summary>The shear-thinning index: viscosity at a rate over that at ten times the rate (the trade's way with two speeds).</summary>
/// <param name="Value">1 for a liquid that does not thin, more for one that does.</param>
/// <param name="From">The lower rate.</param>
/// <param name="IsOutside">Whether one of the rates lies outside the data.</param>
public sealed record ThinningIndex(double Value, ShearRate From, bool IsOutside);
