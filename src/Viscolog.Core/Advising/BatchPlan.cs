using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>How to make a batch after a run.</summary>
/// <param name="Run">The run, with the repeatability in force.</param>
/// <param name="Recipe">What it is made of, free of its size.</param>
/// <param name="Amounts">How much of each; base weighed to <see cref="BaseScaleStep"/>.</param>
public sealed record BatchPlan(Run Run, Recipe Recipe, RecipeAmounts Amounts)
{
    /// <summary>The part of the final dose that goes in first (common practice, no source).</summary>
    public const double FirstPart = 0.7;

    /// <summary>
    /// The greatest chance of going over that the first dose may carry, as a fraction; beyond it less goes in. It is larger than that of an addition to a
    /// pot at hand, as a batch that nobody has dosed yet may be of any lot (a rule of this project).
    /// </summary>
    public const double FirstRisk = 0.1;

    /// <summary>The size that was asked for.</summary>
    public required BatchSize Size { get; init; }

    /// <summary>Its volume; null where the base's density is not known.</summary>
    public Volume? Volume { get; init; }

    /// <summary>The band aimed at; null where nothing states one.</summary>
    public ViscosityBand? Band { get; init; }

    /// <summary>Where the final doses come from, a sentence.</summary>
    public required string Source { get; init; }

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
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Safety at the bench.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];
}
