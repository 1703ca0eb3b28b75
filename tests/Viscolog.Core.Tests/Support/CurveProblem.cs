using Viscolog.Core.Fitting;

namespace Viscolog.Core.Tests.Support;

/// <summary>Readings y at x and a curve written with <see cref="Dual"/>; with exact or with differenced derivatives.</summary>
public sealed class CurveProblem(
    int parameters, IReadOnlyList<double[]> x, IReadOnlyList<double> y, Func<Dual[], double[], Dual> curve, bool exact)
    : ResidualProblem(parameters, y.Count)
{
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        Dual[] b = Dual.Variables(parameters);
        for (int i = 0; i < residuals.Length; i++)
        {
            residuals[i] = curve(b, x[i]).Value - y[i];
        }
    }

    public override bool TryJacobian(ReadOnlySpan<double> parameters, double[,] jacobian)
    {
        if (!exact)
        {
            return false;
        }

        Dual[] b = Dual.Variables(parameters);
        for (int i = 0; i < y.Count; i++)
        {
            Dual value = curve(b, x[i]);
            for (int j = 0; j < b.Length; j++)
            {
                jacobian[i, j] = value.Slopes[j];
            }
        }

        return true;
    }
}
