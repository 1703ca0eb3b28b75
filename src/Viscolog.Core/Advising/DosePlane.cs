using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What a picture of a run with two thickeners shows of body and string over both doses.</summary>
/// <param name="OverBody">Over the dose of the thickener that makes the body.</param>
/// <param name="OverString">Over the dose of the thickener that brings the string.</param>
/// <param name="Map">Over both.</param>
/// <param name="Path">The steps in order of time: the path through the doses.</param>
public sealed record DosePlane(DoseSlice OverBody, DoseSlice OverString, DoseMap Map, ImmutableArray<PlanePoint> Path)
{
    /// <summary>Where the advised addition leads; null where nothing is to be added.</summary>
    public Doses? Next { get; init; }

    /// <summary>Where the plan ends; null where there is none.</summary>
    public Doses? End { get; init; }
}

/// <summary>Believed medians of body and string over a grid of two doses.</summary>
/// <param name="BodyDoses">Doses of the thickener that makes the body, evenly spaced from 0.</param>
/// <param name="StringDoses">Doses of the thickener that brings the string, evenly spaced from 0.</param>
/// <param name="Bodies">Row by row, a row for each of <paramref name="StringDoses"/>.</param>
/// <param name="Lengths">Likewise.</param>
public sealed record DoseMap(
    ImmutableArray<Dose> BodyDoses, ImmutableArray<Dose> StringDoses, ImmutableArray<Viscosity> Bodies, ImmutableArray<Length> Lengths);

/// <summary>Body and string at one dose of a slice.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Body">The settled body.</param>
/// <param name="Length">The string.</param>
public sealed record SliceSample(Dose Dose, Estimate Body, LengthEstimate Length);

/// <summary>Body and string over the dose of one of two thickeners, the other's dose staying where it is.</summary>
/// <param name="Thickener">Its name.</param>
/// <param name="Other">The other's name.</param>
/// <param name="OtherDose">The other's dose.</param>
/// <param name="Samples">In rising order of dose.</param>
public sealed record DoseSlice(string Thickener, string Other, Dose OtherDose, ImmutableArray<SliceSample> Samples);

/// <summary>One step of a run with two thickeners as a plot shows it.</summary>
/// <param name="Place">Its doses.</param>
/// <param name="Bodies">The readings of body, at the reference temperature.</param>
/// <param name="Lengths">The readings of string.</param>
public sealed record PlanePoint(Doses Place, ImmutableArray<Viscosity> Bodies, ImmutableArray<Length> Lengths);
