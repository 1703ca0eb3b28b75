namespace Viscolog.Core.Tests.Support;

/// <summary>Correct digits: the log relative error, at most 11.</summary>
public static class Digits
{
    public static double Of(double value, double certified) =>
        value == certified ? 11 : Math.Min(11, -Math.Log10(Math.Abs(value - certified) / Math.Abs(certified)));

    public static double Least(IReadOnlyList<double> values, IReadOnlyList<double> certified) =>
        values.Zip(certified, Of).Min();
}
