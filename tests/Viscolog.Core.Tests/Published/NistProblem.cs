using System.Globalization;
using Viscolog.Core.Tests.Support;
using static Viscolog.Core.Tests.Support.Dual;

namespace Viscolog.Core.Tests.Published;

/// <summary>One certified problem: NIST/ITL Statistical Reference Datasets, nonlinear regression (public domain).</summary>
public sealed class NistProblem
{
    private static readonly Dictionary<string, Func<Dual[], double[], Dual>> Curves = new(StringComparer.Ordinal)
    {
        ["Bennett5"] = (b, x) => b[0] * Pow(b[1] + x[0], -1 / b[2]),
        ["BoxBOD"] = (b, x) => b[0] * (1 - Exp(-b[1] * x[0])),
        ["Chwirut1"] = (b, x) => Exp(-b[0] * x[0]) / (b[1] + (b[2] * x[0])),
        ["Chwirut2"] = (b, x) => Exp(-b[0] * x[0]) / (b[1] + (b[2] * x[0])),
        ["DanWood"] = (b, x) => b[0] * Pow(x[0], b[1]),
        ["ENSO"] = (b, x) => b[0] + (b[1] * Math.Cos(Math.Tau * x[0] / 12)) + (b[2] * Math.Sin(Math.Tau * x[0] / 12))
            + (b[4] * Cos(Math.Tau * x[0] / b[3])) + (b[5] * Sin(Math.Tau * x[0] / b[3]))
            + (b[7] * Cos(Math.Tau * x[0] / b[6])) + (b[8] * Sin(Math.Tau * x[0] / b[6])),
        ["Eckerle4"] = (b, x) => b[0] / b[1] * Exp(-0.5 * Square((x[0] - b[2]) / b[1])),
        ["Gauss1"] = Gauss,
        ["Gauss2"] = Gauss,
        ["Gauss3"] = Gauss,
        ["Hahn1"] = Cubic,
        ["Kirby2"] = (b, x) => (b[0] + (x[0] * (b[1] + (x[0] * b[2])))) / (1 + (x[0] * (b[3] + (x[0] * b[4])))),
        ["Lanczos1"] = Lanczos,
        ["Lanczos2"] = Lanczos,
        ["Lanczos3"] = Lanczos,
        ["MGH09"] = (b, x) => b[0] * ((x[0] * x[0]) + (x[0] * b[1])) / ((x[0] * x[0]) + (x[0] * b[2]) + b[3]),
        ["MGH10"] = (b, x) => b[0] * Exp(b[1] / (x[0] + b[2])),
        ["MGH17"] = (b, x) => b[0] + (b[1] * Exp(-x[0] * b[3])) + (b[2] * Exp(-x[0] * b[4])),
        ["Misra1a"] = (b, x) => b[0] * (1 - Exp(-b[1] * x[0])),
        ["Misra1b"] = (b, x) => b[0] * (1 - Pow(1 + (b[1] * x[0] / 2), -2)),
        ["Misra1c"] = (b, x) => b[0] * (1 - Pow(1 + (2 * b[1] * x[0]), -0.5)),
        ["Misra1d"] = (b, x) => b[0] * b[1] * x[0] / (1 + (b[1] * x[0])),
        ["Nelson"] = (b, x) => b[0] - (b[1] * x[0] * Exp(-b[2] * x[1])),
        ["Rat42"] = (b, x) => b[0] / (1 + Exp(b[1] - (b[2] * x[0]))),
        ["Rat43"] = (b, x) => b[0] / Pow(1 + Exp(b[1] - (b[2] * x[0])), 1 / b[3]),
        ["Roszman1"] = (b, x) => b[0] - (b[1] * x[0]) - (Atan(b[2] / (x[0] - b[3])) / Math.PI),
        ["Thurber"] = Cubic,
    };

    private readonly List<double> y = [];
    private readonly List<double[]> x = [];
    private readonly List<double>[] starts = [[], []];
    private readonly List<double> certified = [];
    private readonly List<double> errors = [];

    private NistProblem(string name, string[] lines)
    {
        Name = name;
        foreach (string line in lines)
        {
            // "b1 =   1   100   2.1380940889E+02  1.2354515176E+01": start 1, start 2, certified value, its standard deviation.
            string[] words = line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            if (words is [['b', ..], "=", _, _, _, _])
            {
                starts[0].Add(Number(words[2]));
                starts[1].Add(Number(words[3]));
                certified.Add(Number(words[4]));
                errors.Add(Number(words[5]));
            }
        }

        SumOfSquares = After(lines, "Residual Sum of Squares:");
        StandardDeviation = After(lines, "Residual Standard Deviation:");
        foreach (string line in lines.Skip(60).Where(line => !string.IsNullOrWhiteSpace(line)))
        {
            double[] row = [.. line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(Number)];
            y.Add(name == "Nelson" ? Math.Log(row[0]) : row[0]);
            x.Add(row[1..]);
        }
    }

    public static IEnumerable<string> Names => Curves.Keys;

    public string Name { get; }

    public double SumOfSquares { get; }

    public double StandardDeviation { get; }

    public IReadOnlyList<double> Certified => certified;

    public IReadOnlyList<double> Errors => errors;

    public static NistProblem Read(string name) =>
        new(name, File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "nist-strd", name + ".dat")));

    public double[] Start(int number) => [.. starts[number - 1]];

    public CurveProblem Problem(bool exact) => new(certified.Count, x, y, Curves[Name], exact);

    private static Dual Gauss(Dual[] b, double[] x) => (b[0] * Exp(-b[1] * x[0]))
        + (b[2] * Exp(-Square((x[0] - b[3]) / b[4]))) + (b[5] * Exp(-Square((x[0] - b[6]) / b[7])));

    private static Dual Lanczos(Dual[] b, double[] x) =>
        (b[0] * Exp(-b[1] * x[0])) + (b[2] * Exp(-b[3] * x[0])) + (b[4] * Exp(-b[5] * x[0]));

    private static Dual Cubic(Dual[] b, double[] x) => (b[0] + (x[0] * (b[1] + (x[0] * (b[2] + (x[0] * b[3]))))))
        / (1 + (x[0] * (b[4] + (x[0] * (b[5] + (x[0] * b[6]))))));

    private static double After(string[] lines, string label) =>
        Number(lines.First(line => line.StartsWith(label, StringComparison.Ordinal))[label.Length..]);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
