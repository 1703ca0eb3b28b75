using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>The parts of a rotational viscometer between which the sample is sheared. The set of cases is closed.</summary>
public abstract record Geometry
{
    private protected Geometry()
    {
    }

    /// <summary>Shear rate and stress where they are stated, for a liquid that flows by a power law near this speed.</summary>
    /// <param name="torque">On the turning part.</param>
    /// <param name="radiansPerSecond">Its speed; above 0.</param>
    /// <param name="index">d ln torque/d ln speed: 1 for a Newtonian liquid, less for one that thins; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Speed or index is not above 0.</exception>
    public (ShearRate Rate, Stress Stress) At(Torque torque, double radiansPerSecond, double index)
        => (ShearRate.FromPerSecond(RatePerSpeed(Guard.Positive(index)) * Guard.Positive(radiansPerSecond)),
            Stress.FromPascals(StressPerTorque(index) * torque.NewtonMeters));

    /// <summary>Shear rate over angular speed, a pure number.</summary>
    /// <param name="index">d ln torque/d ln speed, above 0.</param>
    public abstract double RatePerSpeed(double index);

    /// <summary>Shear stress over torque, in 1/m³.</summary>
    /// <param name="index">d ln torque/d ln speed, above 0.</param>
    public abstract double StressPerTorque(double index);

    /// <summary>Whether its sizes are outside what the formula is for.</summary>
    public abstract bool IsDoubtful { get; }

    private static double Meters(Length length) => Guard.Positive(length.Millimeters) / 1000;

    /// <summary>
    /// A bob turning in a cup, or alone in a wide vessel. At the bob τ = M/(2π·R²·L·c); rate over speed (2/n)·α^(2/n)/(α^(2/n) − 1), exact
    /// for a power law (Krieger and Elrod 1953; from memory); 2/n in a wide vessel.
    /// </summary>
    /// <param name="Bob">Its radius.</param>
    /// <param name="Cup">The cup's inner radius, above the bob's; null for a wide vessel.</param>
    /// <param name="Immersed">Length of the bob's straight wall in the liquid.</param>
    /// <param name="EndFactor">
    /// Torque of wall and ends over that of the wall alone: 1.10 for the standard shape of ISO 3219 (from memory); 1 or more.
    /// </param>
    public sealed record ConcentricCylinder(Length Bob, Length? Cup, Length Immersed, double EndFactor = 1.1) : Geometry
    {
        /// <summary>Wider gaps than this ratio are outside ISO 3219 (from memory).</summary>
        private const double StandardRatio = 1.2;

        /// <summary>Radius of the cup over that of the bob; infinite in a wide vessel.</summary>
        public double Ratio { get; } = Cup is null ? double.PositiveInfinity
            : Cup > Bob ? Cup.Value.Millimeters / Bob.Millimeters
            : throw new ArgumentOutOfRangeException(nameof(Cup), Cup.Value.Millimeters, "must be above the bob's radius");

        /// <inheritdoc/>
        public override bool IsDoubtful => Ratio > StandardRatio;

        /// <inheritdoc/>
        public override double RatePerSpeed(double index)
        {
            var twice = 2 / Guard.Positive(index);
            return double.IsInfinity(Ratio) ? twice : twice / -double.ExpM1(-twice * Math.Log(Ratio));
        }

        /// <inheritdoc/>
        public override double StressPerTorque(double index)
            => 1 / (2 * Math.PI * Meters(Bob) * Meters(Bob) * Meters(Immersed) * Guard.AtLeast(EndFactor, 1));

        /// <summary>
        /// The angle in degrees under a conical bob at which cone and gap shear alike: tan θ = (α² − 1)/(2α²) (Steffe, Rheological
        /// Methods in Food Process Engineering, 2nd edition 1996, p. 234).
        /// </summary>
        public double MatchingConeDegrees => Math.Atan((1 - (1 / (Ratio * Ratio))) / 2) * 180 / Math.PI;
    }

    /// <summary>
    /// A cone turning on a plate: τ = 3M/(2π·R³), rate over speed 1/tan θ (ISO 3219; from memory). The same for every liquid.
    /// </summary>
    /// <param name="Radius">Of the cone.</param>
    /// <param name="Degrees">Angle between cone and plate; above 0 and at most 10.</param>
    public sealed record ConePlate(Length Radius, double Degrees) : Geometry
    {
        /// <inheritdoc/>
        public override bool IsDoubtful => Degrees > 4;

        /// <inheritdoc/>
        public override double RatePerSpeed(double index) => 1 / Math.Tan(Guard.Between(Degrees, 0.01, 10) * Math.PI / 180);

        /// <inheritdoc/>
        public override double StressPerTorque(double index) => 3 / (2 * Math.PI * Math.Pow(Meters(Radius), 3));
    }

    /// <summary>
    /// Two parallel plates, stated at the rim: rate over speed R/h; τ = M·(3 + n)/(2π·R³), the correction of Weissenberg and Rabinowitsch
    /// (from memory).
    /// </summary>
    /// <param name="Radius">Of the plates.</param>
    /// <param name="Gap">Between them.</param>
    public sealed record ParallelPlates(Length Radius, Length Gap) : Geometry
    {
        /// <inheritdoc/>
        public override bool IsDoubtful => Gap.Millimeters > Radius.Millimeters / 5;

        /// <inheritdoc/>
        public override double RatePerSpeed(double index) => Meters(Radius) / Meters(Gap);

        /// <inheritdoc/>
        public override double StressPerTorque(double index) => (3 + index) / (2 * Math.PI * Math.Pow(Meters(Radius), 3));
    }
}
