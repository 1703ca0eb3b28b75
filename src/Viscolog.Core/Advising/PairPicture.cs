using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Everything that pictures of a run with two thickeners show, computed once.</summary>
/// <param name="Name">The run's name; null where it has none.</param>
/// <param name="BodyThickener">The thickener that makes the body.</param>
/// <param name="StringThickener">The thickener that brings the string.</param>
/// <param name="ReferenceTemperature">The temperature that bodies are stated at.</param>
public sealed record PairPicture(string? Name, string BodyThickener, string StringThickener, Temperature ReferenceTemperature)
{
    /// <summary>The steps in order of time: the path through the doses.</summary>
    public ImmutableArray<PairPoint> Path { get; init; } = [];

    /// <summary>Over the dose of the body thickener.</summary>
    public required PairSlice OverBody { get; init; }

    /// <summary>Over the dose of the string thickener.</summary>
    public required PairSlice OverString { get; init; }

    /// <summary>Over both.</summary>
    public required PairMap Map { get; init; }

    /// <summary>The band of the body; null for none.</summary>
    public ViscosityBand? Target { get; init; }

    /// <summary>The band of the string; null for none.</summary>
    public StringBand? TargetString { get; init; }

    /// <summary>Where the advised addition leads; null where nothing is to be added.</summary>
    public PairPlace? Next { get; init; }

    /// <summary>Where the plan ends; null where there is none.</summary>
    public PairPlace? End { get; init; }
}

/// <summary>Believed medians of body and string over a grid of two doses.</summary>
/// <param name="BodyDoses">Doses of the thickener that makes the body, evenly spaced from 0.</param>
/// <param name="StringDoses">Doses of the thickener that brings the string, evenly spaced from 0.</param>
/// <param name="Bodies">Row by row, a row for each of <paramref name="StringDoses"/>.</param>
/// <param name="Lengths">Likewise.</param>
public sealed record PairMap(ImmutableArray<Dose> BodyDoses, ImmutableArray<Dose> StringDoses, ImmutableArray<Viscosity> Bodies, ImmutableArray<Length> Lengths)
{
    /// <summary>The body at places of the grid.</summary>
    /// <param name="column">Place in <see cref="BodyDoses"/>.</param>
    /// <param name="row">Place in <see cref="StringDoses"/>.</param>
    public Viscosity Body(int column, int row) => Bodies[(row * BodyDoses.Length) + column];

    /// <summary>The string at places of the grid.</summary>
    /// <param name="column">Place in <see cref="BodyDoses"/>.</param>
    /// <param name="row">Place in <see cref="StringDoses"/>.</param>
    public Length Length(int column, int row) => Lengths[(row * BodyDoses.Length) + column];
}

/// <summary>Body and string at one dose of a slice.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Body">The settled body.</param>
/// <param name="Length">The string.</param>
public sealed record PairSample(Dose Dose, Estimate Body, LengthEstimate Length);

/// <summary>Body and string over the dose of one of two thickeners, the other's dose staying where it is.</summary>
/// <param name="Thickener">Its name.</param>
/// <param name="Other">The other's name.</param>
/// <param name="OtherDose">The other's dose.</param>
/// <param name="Samples">In rising order of dose.</param>
public sealed record PairSlice(string Thickener, string Other, Dose OtherDose, ImmutableArray<PairSample> Samples);

/// <summary>One step of a run with two thickeners as a plot shows it.</summary>
/// <param name="Place">Its doses.</param>
/// <param name="Bodies">The readings of body, at the reference temperature.</param>
/// <param name="Lengths">The readings of string.</param>
public sealed record PairPoint(PairPlace Place, System.Collections.Immutable.ImmutableArray<Viscosity> Bodies, System.Collections.Immutable.ImmutableArray<Length> Lengths);
