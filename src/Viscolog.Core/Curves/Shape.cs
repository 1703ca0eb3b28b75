using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>
/// One family of dose–response curve: the rise u(z) − u(0) of u = ln(body in mPa·s) over z, the dose divided by the top of the thickener's
/// usual range. All parameters are positive and are handled as natural logarithms.
/// </summary>
public abstract class Shape
{
    private protected Shape(string name, params ImmutableArray<ShapeParameter> parameters) => (Name, Parameters) = (name, parameters);

    /// <summary>The shape's name in reports and files.</summary>
    public string Name { get; }

    /// <summary>The parameters with their priors (version 1 of the priors; see docs/science.md).</summary>
    public ImmutableArray<ShapeParameter> Parameters { get; }

    /// <summary>How often curves have this shape before any reading, against an ordinary shape's 1.</summary>
    internal virtual double PriorWeight => 1;

    /// <summary>
    /// How each parameter's logarithm changes with that of the thickener's potency, a factor on every dose; exact but for the rises at the
    /// range top of curved shapes, where the value at the priors' medians stands.
    /// </summary>
    internal abstract ImmutableArray<double> Potency { get; }

    /// <summary>Median of how far a true curve strays from this shape, in ln units over the whole range.</summary>
    internal virtual double StrayMedian => BeliefSettings.StrayMedian;

    /// <summary>Standard deviation of the logarithm of that.</summary>
    internal virtual double StrayLogSd => BeliefSettings.StrayLogSd;

    /// <summary>The rise above the unthickened base, in ln units.</summary>
    /// <param name="logParameters">Natural logarithms of the parameters, in the order of <see cref="Parameters"/>.</param>
    /// <param name="z">Dose over the top of the usual range, 0 or more.</param>
    public double Rise(ReadOnlySpan<double> logParameters, double z)
    {
        Span<double> parameters = stackalloc double[logParameters.Length];
        Exponentiate(logParameters, parameters);
        return RiseOf(parameters, z);
    }

    /// <summary>Takes parameters out of their logarithms.</summary>
    internal static void Exponentiate(ReadOnlySpan<double> logParameters, Span<double> parameters)
    {
        for (var i = 0; i < logParameters.Length; i++)
        {
            parameters[i] = Math.Exp(logParameters[i]);
        }
    }

    /// <summary>The same from the parameters themselves.</summary>
    internal abstract double RiseOf(ReadOnlySpan<double> parameters, double z);
}
