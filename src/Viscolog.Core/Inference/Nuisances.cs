using System.Runtime.InteropServices;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// What a draw holds beside its curve and all readings of the run share: build-up, scatter, temperature coefficient (nuisance parameters).
/// In a row each stands as a number that is standard normal before any reading, whatever the run; what it means depends on the run.
/// </summary>
internal sealed class Nuisances(Evidence evidence)
{
    /// <summary>How many numbers of a row they take: time, stretch, scatter, warmth.</summary>
    public const int Count = 4;

    /// <summary>Place of the scatter among them.</summary>
    public const int ScatterPlace = 2;

    private readonly KineticsPrior _kinetics = KineticsPrior.Of(evidence.Thickener.Chemistry);
    private readonly TemperatureCoefficient _coefficient = evidence.Run.Setup.TemperatureCoefficient ?? TemperatureCoefficient.Default;

    // Logarithms and exponentials of a hundred thousand draws are what advice takes its time for: none for what no reading tells of.
    private readonly bool _isTimed = evidence.Steps.Any(s => s.Readings.Any(r => double.IsFinite(r.WaitSeconds)));
    private readonly bool _isWarm = evidence.Steps.Any(s => s.Readings.Any(r => r.Distance != 0));
    private readonly double _repeatability = evidence.Repeatability * Math.Exp(evidence.LnRepeatabilityOff.Mean);

    /// <summary>What the numbers of a row mean in this run.</summary>
    public Nuisance At(ReadOnlySpan<double> row) => ForLikelihood(row) with { Kinetics = _kinetics.At(row[0], row[1]) };

    /// <summary>What of it the likelihood needs.</summary>
    public Nuisance ForLikelihood(ReadOnlySpan<double> row) => new(
        _isTimed ? _kinetics.At(row[0], row[1]) : default,
        _repeatability * Math.Exp(evidence.LnRepeatabilityOff.Sd * row[ScatterPlace]),
        _isWarm ? _coefficient.At(row[3]) - evidence.CoefficientUsed : 0);
}

/// <summary>One draw of what all readings of a run share.</summary>
/// <param name="Kinetics">The build-up.</param>
/// <param name="Repeatability">Standard deviation of a reading, in ln units.</param>
/// <param name="CoefficientOff">In K, by how much the temperature coefficient differs from the one that the readings were corrected
/// with.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Nuisance(Kinetics Kinetics, double Repeatability, double CoefficientOff);
