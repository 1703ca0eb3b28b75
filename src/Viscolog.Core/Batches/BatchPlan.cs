using System.Collections.Immutable;
using Viscolog.Core.Limits;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>How to make a batch after a run.</summary>
/// <param name="Run">The run, with the repeatability in force.</param>
/// <param name="Recipe">What it is made of, free of its size.</param>
/// <param name="Amounts">How much of each; base weighed to <see cref="BaseScaleStep"/>.</param>
public sealed record BatchPlan(Run Run, Recipe Recipe, RecipeAmounts Amounts)
{
    /// <summary>The part of the final dose that goes in first (common practice, no source).</summary>
    public const double FirstPart = 0.7;

    /// <summary>
    /// The greatest chance of going over that the first dose may carry, as a fraction; beyond it less goes in. It is larger than that of
    /// an addition to a pot at hand, as a batch that nobody has dosed yet may be of any lot (a rule of this project).
    /// </summary>
    public const double FirstRisk = 0.1;

    /// <summary>The size that was asked for.</summary>
    public required BatchSize Size { get; init; }

    /// <summary>Its volume; null where the base's density is not known.</summary>
    public Volume? Volume { get; init; }

    /// <summary>The band aimed at; null where nothing states one.</summary>
    public ViscosityBand? Band { get; init; }

    /// <summary>Where the final doses come from.</summary>
    public required BatchSource Source { get; init; }

    /// <summary>The additions in order.</summary>
    public ImmutableArray<BatchStep> Steps { get; init; } = [];

    /// <summary>Step of the scale for thickeners.</summary>
    public required Mass ScaleStep { get; init; }

    /// <summary>Step of the scale for the base: a thousandth of it or finer.</summary>
    public required Mass BaseScaleStep { get; init; }

    /// <summary>Stirring after an addition in the run, in the middle of its steps; null where nobody wrote it down.</summary>
    public TimeSpan? Stir { get; init; }

    /// <summary>The body of the run's base before any thickener; null where nothing tells.</summary>
    public Viscosity? BaseOfRun { get; init; }

    /// <summary>The lowest and the highest pH of the run; null where it was not measured.</summary>
    public (Acidity Low, Acidity High)? AcidityOfRun { get; init; }

    /// <summary>What the reader must know.</summary>
    public ImmutableArray<BatchNote> Notes { get; init; } = [];

    /// <summary>Safety at the bench.</summary>
    public ImmutableArray<Caution> Cautions { get; init; } = [];
}

/// <summary>Whether a batch could be planned. The set of cases is closed.</summary>
public abstract record BatchOutcome
{
    private protected BatchOutcome()
    {
    }

    /// <summary>It could.</summary>
    /// <param name="Plan">The plan.</param>
    public sealed record Planned(BatchPlan Plan) : BatchOutcome;

    /// <summary>It could not.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Refused(BatchRefusal Reason) : BatchOutcome;
}

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

/// <summary>A place on the way to a batch's final doses.</summary>
/// <param name="Fraction">The part of every final dose that is in then; above 0, at most 1.</param>
/// <param name="Standing">Standing before the reading; null where nothing tells.</param>
/// <param name="Expected">The settled body expected; null where nothing tells.</param>
internal sealed record BatchStage(double Fraction, TimeSpan? Standing, Estimate? Expected)
{
    /// <summary>The chance of being over the band then; null where nothing tells.</summary>
    public Percentage? ChanceOver { get; init; }
}

/// <summary>What a batch is made after.</summary>
/// <param name="Run">The run, with the repeatability in force.</param>
/// <param name="Band">The band aimed at; null where there is none.</param>
/// <param name="Source">Where the final doses come from.</param>
/// <param name="Warnings">What a reader of the run's curve must know.</param>
internal sealed record BatchFrame(Run Run, ViscosityBand? Band, BatchSource Source, ImmutableArray<EvidenceWarning> Warnings)
{
    /// <summary>The body of the run's base before any thickener; null where nothing tells.</summary>
    public Viscosity? BaseBody { get; init; }
}
