namespace Viscolog.Core.Curves;

/// <summary>A reading as the curve sees it.</summary>
/// <param name="Entry">The place of its entry in the run, from 0.</param>
/// <param name="Step">The place of its step in the evidence, from 0.</param>
/// <param name="WaitSeconds">Standing time in s; infinity where it counts as settled.</param>
/// <param name="Ln">ln of the viscosity in mPa·s at the reference temperature.</param>
/// <param name="ExtraVariance">Variance in ln units beyond the method's repeatability (temperature correction, water added later).</param>
internal sealed record BodyReading(int Entry, int Step, double WaitSeconds, double Ln, double ExtraVariance);
