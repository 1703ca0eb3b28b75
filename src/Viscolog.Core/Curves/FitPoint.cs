namespace Viscolog.Core.Curves;

/// <summary>Parameters with the residuals there; all finite.</summary>
/// <param name="Parameters">The parameters.</param>
/// <param name="Residuals">The residuals.</param>
/// <param name="SumOfSquares">Their sum of squares.</param>
internal sealed record FitPoint(double[] Parameters, double[] Residuals, double SumOfSquares);
