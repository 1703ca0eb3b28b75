namespace Viscolog.Core.Tests.Support;

/// <summary>A value with its derivatives by every parameter: exact Jacobians for test models written once.</summary>
public sealed class Dual(double value, double[] slopes)
{
    public double Value { get; } = value;

    public IReadOnlyList<double> Slopes => slopes;

    public static Dual[] Variables(ReadOnlySpan<double> values)
    {
        var variables = new Dual[values.Length];
        for (int j = 0; j < values.Length; j++)
        {
            var unit = new double[values.Length];
            unit[j] = 1;
            variables[j] = new Dual(values[j], unit);
        }

        return variables;
    }

    public static Dual operator +(Dual a, Dual b) => Chain(a, b, a.Value + b.Value, 1, 1);

    public static Dual operator +(Dual a, double b) => Chain(a, a.Value + b, 1);

    public static Dual operator +(double a, Dual b) => b + a;

    public static Dual operator -(Dual a, Dual b) => Chain(a, b, a.Value - b.Value, 1, -1);

    public static Dual operator -(Dual a, double b) => Chain(a, a.Value - b, 1);

    public static Dual operator -(double a, Dual b) => Chain(b, a - b.Value, -1);

    public static Dual operator -(Dual a) => Chain(a, -a.Value, -1);

    public static Dual operator *(Dual a, Dual b) => Chain(a, b, a.Value * b.Value, b.Value, a.Value);

    public static Dual operator *(Dual a, double b) => Chain(a, a.Value * b, b);

    public static Dual operator *(double a, Dual b) => b * a;

    public static Dual operator /(Dual a, Dual b) =>
        Chain(a, b, a.Value / b.Value, 1 / b.Value, -a.Value / (b.Value * b.Value));

    public static Dual operator /(Dual a, double b) => a * (1 / b);

    public static Dual operator /(double a, Dual b) => Chain(b, a / b.Value, -a / (b.Value * b.Value));

    public static Dual Exp(Dual a)
    {
        double e = Math.Exp(a.Value);
        return Chain(a, e, e);
    }

    public static Dual Log(Dual a) => Chain(a, Math.Log(a.Value), 1 / a.Value);

    public static Dual Cos(Dual a) => Chain(a, Math.Cos(a.Value), -Math.Sin(a.Value));

    public static Dual Sin(Dual a) => Chain(a, Math.Sin(a.Value), Math.Cos(a.Value));

    public static Dual Atan(Dual a) => Chain(a, Math.Atan(a.Value), 1 / (1 + (a.Value * a.Value)));

    public static Dual Pow(Dual a, double power) => Chain(a, Math.Pow(a.Value, power), power * Math.Pow(a.Value, power - 1));

    public static Dual Pow(Dual a, Dual b)
    {
        double p = Math.Pow(a.Value, b.Value);
        return Chain(a, b, p, b.Value * Math.Pow(a.Value, b.Value - 1), p * Math.Log(a.Value));
    }

    /// <summary>base to the power, for a base that is a number above 0.</summary>
    public static Dual Pow(double a, Dual b)
    {
        double p = Math.Pow(a, b.Value);
        return Chain(b, p, p * Math.Log(a));
    }

    public static Dual Square(Dual a) => a * a;

    private static Dual Chain(Dual a, double value, double slope)
    {
        var slopes = new double[a.Slopes.Count];
        for (int j = 0; j < slopes.Length; j++)
        {
            slopes[j] = slope * a.Slopes[j];
        }

        return new Dual(value, slopes);
    }

    private static Dual Chain(Dual a, Dual b, double value, double byA, double byB)
    {
        var slopes = new double[a.Slopes.Count];
        for (int j = 0; j < slopes.Length; j++)
        {
            slopes[j] = (byA * a.Slopes[j]) + (byB * b.Slopes[j]);
        }

        return new Dual(value, slopes);
    }
}
