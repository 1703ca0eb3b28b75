using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>How the string rises along the dose of the thickener that brings it: from 0 at no dose to 1 at its range top.</summary>
internal abstract class StringForm
{
    private protected StringForm(double share, params ImmutableArray<(double Mean, double Sd)> priors) => (Share, Priors) = (share, priors);

    /// <summary>Every form in use.</summary>
    public static ImmutableArray<StringForm> All { get; } = [new BentString(), new LateString()];

    /// <summary>How often strings rise like this before any reading.</summary>
    public double Share { get; }

    /// <summary>Means and standard deviations of the form's numbers before any reading.</summary>
    public ImmutableArray<(double Mean, double Sd)> Priors { get; }

    /// <summary>The rise.</summary>
    /// <param name="numbers">The form's numbers, in the order of the priors.</param>
    /// <param name="z">Dose over the range top, 0 or more.</param>
    public abstract double Rise(ReadOnlySpan<double> numbers, double z);
}
