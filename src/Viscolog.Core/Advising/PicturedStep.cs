using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>One step as a plot shows it: the settled value it leads to and the way there.</summary>
/// <param name="Step">The step's place in the run, from 0.</param>
/// <param name="Dose">Its dose.</param>
/// <param name="Settled">The settled value.</param>
/// <param name="Way">Expected value over the standing time, in rising order of time; empty for the step before any addition.</param>
public sealed record PicturedStep(int Step, Dose Dose, Estimate Settled, ImmutableArray<TimedEstimate> Way);
