namespace Viscolog.Core.Inference;

/// <summary>The numbers that steer the posterior's computation; one place, version 1.</summary>
internal static class PosteriorSettings
{
    /// <summary>Median of an unthickened base's viscosity in mPa·s; from memory.</summary>
    public const double BaseMedian = 1000;

    /// <summary>Standard deviation of its logarithm: wide enough for anything that pours.</summary>
    public const double BaseLogSd = 3;

    /// <summary>Share of readings that are outliers (misread, misweighed, bubbles); from memory.</summary>
    public const double OutlierShare = 0.02;

    /// <summary>Standard deviation of an outlier in ln units; from memory.</summary>
    public const double OutlierSd = 0.5;

    /// <summary>Share of readings that are blunders (a digit too many, another unit); from memory.</summary>
    public const double BlunderShare = 0.002;

    /// <summary>Scale of the Cauchy distribution of a blunder in ln units, so that ten times and a thousand times off are both at home;
    /// from memory.</summary>
    public const double BlunderScale = 1;

    /// <summary>
    /// Weight of a curve that never comes up to the aim within <see cref="Posterior.SoughtUpTo"/>: people
    /// choose thickeners that can do the job.
    /// </summary>
    public const double UnreachingWeight = 0.15;

    /// <summary>
    /// Weight, before any thickener is in, of a curve that comes up to the aim below the usual range; from memory: one target in sixteen or
    /// so lies
    /// there. Once a dose is read it speaks for itself, and a thin target is not to be taken for a weak thickener.
    /// </summary>
    public const double BelowRangeWeight = 0.25;
}
