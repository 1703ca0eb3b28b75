using MathNet.Numerics.LinearAlgebra;

namespace Viscolog.Core.Curves;

/// <summary>What a belief says of one shape: its weight and the moments of its parameters.</summary>
/// <param name="Weight">The shape's weight, 0 to 1.</param>
/// <param name="Mean">Mean of the logarithms.</param>
/// <param name="Covariance">Their covariance.</param>
internal sealed record PosteriorSummary(double Weight, double[] Mean, Matrix<double> Covariance);
