using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>One addition of a batch.</summary>
/// <param name="Stage">Which stage it belongs to, from 1; the batch is read after the last addition of each.</param>
/// <param name="Thickener">What is poured.</param>
/// <param name="Poured">How much, its water included, rounded so that the sum never passes what was planned.</param>
/// <param name="PouredSoFar">All of that thickener up to here.</param>
/// <param name="After">Its dose after it.</param>
public sealed record BatchStep(int Stage, string Thickener, Mass Poured, Mass PouredSoFar, Dose After)
{
    /// <summary>What is poured, by volume; null where the density is not known.</summary>
    public Volume? Volume { get; init; }

    /// <summary>Standing before the batch is read; null where it is not read yet, or where nothing tells.</summary>
    public TimeSpan? Standing { get; init; }

    /// <summary>The settled body expected; null where it is not read yet, or where nothing tells.</summary>
    public Estimate? Expected { get; init; }

    /// <summary>The chance of being over the band then; null where it is not read yet, or where nothing tells.</summary>
    public Percentage? ChanceOver { get; init; }

    /// <summary>Whether the batch is read after it.</summary>
    public bool IsRead { get; init; }
}
