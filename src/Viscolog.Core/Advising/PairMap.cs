using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

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
