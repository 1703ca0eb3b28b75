using Viscolog.Core.Curves;

namespace Viscolog.Core.Inference;

/// <summary>
/// One draw of a curve over one thickener, by name over the numbers in a row: the shape's parameters, those of <see cref="Nuisances"/>, ln
/// of the discrepancy.
/// </summary>
internal readonly ref struct CurveParameters(ReadOnlySpan<double> row)
{
    private const int BesideShape = Nuisances.Count + 1;
    private readonly ReadOnlySpan<double> _row = row;

    /// <summary>Logarithms of the shape's parameters.</summary>
    public ReadOnlySpan<double> LogShape => _row[..^BesideShape];

    /// <summary>What all readings share.</summary>
    public ReadOnlySpan<double> Nuisance => _row[^BesideShape..^1];

    /// <summary>The model discrepancy in ln units over the usual range.</summary>
    public double Discrepancy => Math.Exp(_row[^1]);

    /// <summary>How many numbers a row of a shape has.</summary>
    public static int Count(Shape shape) => shape.Parameters.Length + BesideShape;

    /// <summary>Puts values for the logarithms into the order of a row.</summary>
    /// <param name="shape">Those of the shape.</param>
    /// <param name="nuisance">The same for each of what all readings share.</param>
    /// <param name="discrepancy">That of the discrepancy.</param>
    public static double[] Row(IEnumerable<double> shape, double nuisance, double discrepancy)
        => [.. shape, .. Enumerable.Repeat(nuisance, Nuisances.Count), discrepancy];
}

/// <summary>One draw of the body over two thickeners: as <see cref="CurveParameters"/>, with ln p after the shape's parameters.</summary>
internal readonly ref struct PairBodyParameters(ReadOnlySpan<double> row)
{
    private const int BesideShape = Nuisances.Count + 2;
    private readonly ReadOnlySpan<double> _row = row;

    /// <summary>Logarithms of the shape's parameters.</summary>
    public ReadOnlySpan<double> LogShape => _row[..^BesideShape];

    /// <summary>Exponent p of the string thickener's dose.</summary>
    public double Exponent => Math.Exp(_row[^BesideShape]);

    /// <summary>What all readings share.</summary>
    public ReadOnlySpan<double> Nuisance => _row[^(Nuisances.Count + 1)..^1];

    /// <summary>The model discrepancy in ln units over the usual range.</summary>
    public double Discrepancy => Math.Exp(_row[^1]);

    /// <summary>How many numbers a row of a shape has.</summary>
    public static int Count(Shape shape) => shape.Parameters.Length + BesideShape;

    /// <summary>Puts values for the logarithms into the order of a row.</summary>
    public static double[] Row(IEnumerable<double> shape, double exponent, double nuisance, double discrepancy)
        => [.. shape, exponent, .. Enumerable.Repeat(nuisance, Nuisances.Count), discrepancy];
}

/// <summary>One draw of the string: the form's numbers, ln of the discrepancy, ln of the repeatability.</summary>
internal readonly ref struct StringParameters(ReadOnlySpan<double> row)
{
    private const int BesideForm = 2;
    private readonly ReadOnlySpan<double> _row = row;

    /// <summary>The form's numbers.</summary>
    public ReadOnlySpan<double> Form => _row[..^BesideForm];

    /// <summary>The model discrepancy in ln units over the usual range.</summary>
    public double Discrepancy => Math.Exp(_row[^2]);

    /// <summary>Standard deviation of repeat readings on the ln scale.</summary>
    public double Repeatability => Math.Exp(_row[^1]);

    /// <summary>Variance of repeat readings on the ln scale.</summary>
    public double Variance => Math.Exp(2 * _row[^1]);

    /// <summary>How many numbers a row of a form has.</summary>
    public static int Count(StringForm form) => form.Priors.Length + BesideForm;

    /// <summary>Puts values into the order of a row.</summary>
    public static double[] Row(IEnumerable<double> form, double discrepancy, double repeatability) => [.. form, discrepancy, repeatability];
}
