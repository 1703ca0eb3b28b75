namespace Viscolog.Core.Checking;

/// <summary>A reading of the pot as it is now, brought to the reference temperature.</summary>
/// <param name="Ln">ln body in mPa·s.</param>
/// <param name="Own">Standard uncertainty of this very reading beyond the repeatability, in ln units.</param>
/// <param name="Calibration">What the method's own formula leaves open, in ln units.</param>
/// <param name="LnPerCelsius">How its ln body changes with the temperature of the pot, at the reading's temperature.</param>
/// <param name="ShiftSd">Standard deviation of the temperature correction with its sign, shared through the coefficient.</param>
/// <param name="HasTemperature">Whether its temperature was read.</param>
/// <param name="Remaining">Expected build-up still to come, in ln units.</param>
internal sealed record CountedReading(double Ln, double Own, double Calibration, double LnPerCelsius, double ShiftSd, bool HasTemperature, double Remaining);
