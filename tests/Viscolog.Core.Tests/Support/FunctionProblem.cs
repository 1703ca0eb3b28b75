using Viscolog.Core.Fitting;

namespace Viscolog.Core.Tests.Support;

/// <summary>Residuals from a plain function; derivatives by differences.</summary>
public sealed class FunctionProblem(int parameters, int data, int priors, Func<double[], int, double> residual)
    : ResidualProblem(parameters, data, priors)
{
    public int Calls { get; private set; }

    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        Calls++;
        double[] p = parameters.ToArray();
        for (int i = 0; i < residuals.Length; i++)
        {
            residuals[i] = residual(p, i);
        }
    }
}
