namespace Viscolog.Benchmarks.Pots;

/// <summary>How a practice pot and its user err.</summary>
/// <param name="ReadingSd">Standard deviation of ln of a reading.</param>
/// <param name="DosingSd">Relative standard deviation of a dose.</param>
/// <param name="TimeConstantSeconds">τ of the build-up in s; 0 for a pot that is settled at once.</param>
internal sealed record PracticeErrors(double ReadingSd, double DosingSd, double TimeConstantSeconds)
{
    /// <summary>β of the build-up; 1 for first order, less for one with a long tail.</summary>
    public double Stretch { get; init; } = 1;

    /// <summary>How far from the reference the pot is read throughout, in °C; readings state it.</summary>
    public double TemperatureOffset { get; init; }

    /// <summary>How far the temperature swings about the reference, in °C; readings state it.</summary>
    public double TemperatureSwing { get; init; }

    /// <summary>The pot's true Arrhenius–Andrade coefficient in K.</summary>
    public double TemperatureCoefficient { get; init; } = 2000;

    /// <summary>Standard deviation of ln of a string reading.</summary>
    public double StringSd { get; init; } = 0.15;

    /// <summary>Share of readings that are outliers, from 0 to 1.</summary>
    public double OutlierShare { get; init; }

    /// <summary>Standard deviation of an outlier in ln units.</summary>
    public double OutlierSd { get; init; } = 0.5;
}
