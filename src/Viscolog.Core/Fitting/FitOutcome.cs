namespace Viscolog.Core.Fitting;

/// <summary>What came of a fit. The set of cases is closed.</summary>
public abstract record FitOutcome
{
    private protected FitOutcome()
    {
    }

    /// <summary>A minimum was found and checked.</summary>
    /// <param name="Parameters">The parameters, in the order of the problem.</param>
    /// <param name="Covariance">Their uncertainty.</param>
    /// <param name="ResidualSumOfSquares">Over the data rows.</param>
    /// <param name="PriorSumOfSquares">Over the prior rows; 0 where there are none.</param>
    /// <param name="DegreesOfFreedom">Data rows less parameters; can be 0 or below where priors stand in for data.</param>
    /// <param name="Evaluations">Evaluations of the residuals, over all starts and with those for derivatives.</param>
    public sealed record Converged(
        IReadOnlyList<double> Parameters,
        ParameterCovariance Covariance,
        double ResidualSumOfSquares,
        double PriorSumOfSquares,
        int DegreesOfFreedom,
        int Evaluations) : FitOutcome
    {
        /// <summary>What was minimised: the sum over all rows.</summary>
        public double SumOfSquares => ResidualSumOfSquares + PriorSumOfSquares;

        /// <summary>√(RSS / degrees of freedom); null without degrees of freedom.</summary>
        public double? ResidualStandardDeviation =>
            DegreesOfFreedom > 0 ? Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom) : null;

        /// <summary>One standard error a parameter; null where nothing tells the residuals' standard deviation.</summary>
        public IReadOnlyList<double>? StandardErrors => Covariance.StandardErrors;
    }

    /// <summary>No minimum that passes the checks was found.</summary>
    /// <param name="Best">The best parameters seen: a picture, not a result.</param>
    /// <param name="SumOfSquares">The sum of squares there, over all rows.</param>
    /// <param name="Reason">Why, and what to do.</param>
    /// <param name="Evaluations">Evaluations of the residuals.</param>
    public sealed record NotConverged(IReadOnlyList<double> Best, double SumOfSquares, string Reason, int Evaluations) : FitOutcome;

    /// <summary>The fit could not begin.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Impossible(string Reason) : FitOutcome;
}

/// <summary>Parameters with the residuals there; all finite.</summary>
/// <param name="Parameters">The parameters.</param>
/// <param name="Residuals">The residuals.</param>
/// <param name="SumOfSquares">Their sum of squares.</param>
internal sealed record FitPoint(double[] Parameters, double[] Residuals, double SumOfSquares);

/// <summary>A parameter of a fitted shape.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Unit">"ln" for a rise in ln(mPa·s), "%" for a dose in g per 100 g of base, "s" for seconds, "1" for a pure number, "mPa·s"
/// for a viscosity, "mm" for a length.</param>
/// <param name="Value">The value in that unit; above 0 except for what may have either sign, by its name.</param>
/// <param name="StandardError">Its standard error in that unit, by the delta method on the logarithm; null where nothing tells it.</param>
/// <param name="PriorDecides">Whether the readings leave it nearly as unsure as the prior did.</param>
public sealed record FittedParameter(string Name, string Unit, double Value, double? StandardError, bool PriorDecides);
