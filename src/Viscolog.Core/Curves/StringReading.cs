namespace Viscolog.Core.Curves;

/// <summary>A reading of string as the belief sees it.</summary>
/// <param name="Entry">The place of its entry in the run, from 0.</param>
/// <param name="Ln">ln of the length in mm; a string too short to measure counts as the ruler's least.</param>
/// <param name="ExtraVariance">Variance in ln units beyond the repeatability: what the ruler can't tell.</param>
internal sealed record StringReading(int Entry, double Ln, double ExtraVariance);
