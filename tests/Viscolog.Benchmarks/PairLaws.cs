using MathNet.Numerics;
using Viscolog.Core.Practice;

namespace Viscolog.Benchmarks;

/// <summary>
/// Draws hidden laws for two thickeners: the body thickener by one of <see cref="HiddenLaws"/>, what the other does to body and string by
/// families of our own. Most of them the program's model can't reproduce.
/// </summary>
internal static class PairLaws
{
    private static readonly Func<Random, (string Name, Func<double, double, double> Ln)>[] Bodies =
        [EvenBody, FlatteningBody, SteepeningBody, LinkedBody];

    private static readonly Func<Random, (string Name, Func<double, double, double> Ln)>[] Strings =
        [EvenString, FlatteningString, LateString, KinkedString, ShortenedString];

    /// <summary>Draws a law.</summary>
    /// <param name="family">Which family of <see cref="HiddenLaws"/> the body thickener is of, from 0.</param>
    /// <param name="random">Seeded by the caller.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such family.</exception>
    public static PairLaw Draw(int family, Random random)
    {
        var first = HiddenLaws.Draw(family, random);
        var (bodyName, body) = Bodies[random.Next(Bodies.Length)](random);
        var (stringName, strings) = Strings[random.Next(Strings.Length)](random);
        var start = Math.Log(Between(random, 3, 15));
        return new(
            $"{first.Family}, body {bodyName}, string {stringName}",
            (a, b) => first.LnBody(a) + body(a, b),
            (a, b) => start + strings(a, b))
        {
            Useful = first.Useful,
        };
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    private static (string, Func<double, double, double>) EvenBody(Random random)
    {
        var (rise, cross) = (Between(random, 0.5, 2), Between(random, -0.3, 0.8));
        return ("even", (a, b) => rise * b * (1 + (cross * a)));
    }

    private static (string, Func<double, double, double>) FlatteningBody(Random random)
    {
        var (rise, cross, scale) = (Between(random, 0.6, 2), Between(random, -0.3, 0.5), Between(random, 0.3, 0.8));
        return ("flattening", (a, b) => rise * (1 - Math.Exp(-b / scale)) / (1 - Math.Exp(-1 / scale)) * (1 + (cross * a)));
    }

    private static (string, Func<double, double, double>) SteepeningBody(Random random)
    {
        var (rise, cross, power) = (Between(random, 0.6, 2), Between(random, 0, 0.6), Between(random, 1.2, 1.8));
        return ("steepening", (a, b) => rise * Math.Pow(b, power) * (1 + (cross * a)));
    }

    private static (string, Func<double, double, double>) LinkedBody(Random random)
    {
        var (rise, cross) = (Between(random, 0.5, 1.5), Between(random, 0.3, 1));
        return ("linked", (a, b) => rise * b * (1 + (cross * Math.Tanh(3 * a))));
    }

    private static (string, Func<double, double, double>) EvenString(Random random)
    {
        var (rise, byBody) = (Between(random, 1.5, 3.2), Between(random, -0.2, 0.7));
        return ("even", (a, b) => (rise * b) + (byBody * a));
    }

    private static (string, Func<double, double, double>) FlatteningString(Random random)
    {
        var (rise, byBody, scale) = (Between(random, 1.5, 3), Between(random, -0.2, 0.7), Between(random, 0.3, 0.8));
        return ("flattening", (a, b) => (rise * (1 - Math.Exp(-b / scale)) / (1 - Math.Exp(-1 / scale))) + (byBody * a));
    }

    private static (string, Func<double, double, double>) LateString(Random random)
    {
        var (rise, byBody) = (Between(random, 1.5, 3), Between(random, 0, 0.6));
        var (place, width) = (Between(random, 0.2, 0.5), Between(random, 0.12, 0.25));
        double Logistic(double b) => SpecialFunctions.Logistic((b - place) / width);
        return ("late", (a, b) => (rise * (Logistic(b) - Logistic(0)) / (Logistic(1) - Logistic(0))) + (byBody * Math.Sqrt(a)));
    }

    private static (string, Func<double, double, double>) KinkedString(Random random)
    {
        double[] slopes = [.. Enumerable.Range(0, 5).Select(_ => Between(random, 0.6, 4))];
        var byBody = Between(random, -0.2, 0.6);
        return ("kinked", (a, b) =>
        {
            var (sum, left) = (byBody * a, b);
            for (var i = 0; i < slopes.Length; i++)
            {
                var part = i == slopes.Length - 1 ? left : Math.Min(left, 0.2);
                sum += slopes[i] * part;
                left -= part;
            }

            return sum;
        }
        );
    }

    private static (string, Func<double, double, double>) ShortenedString(Random random)
    {
        var (rise, shortening) = (Between(random, 1.8, 3.2), Between(random, 0.1, 0.4));
        return ("shortened", (a, b) => rise * b * (1 - (shortening * a)));
    }
}

/// <summary>A hidden law of body and string over two doses, each over the top of its thickener's usual range.</summary>
/// <param name="Family">The families' names, shown when the pot is revealed.</param>
/// <param name="LnBody">ln of the body in mPa·s, from the body thickener's dose and the string thickener's.</param>
/// <param name="LnString">ln of the string in mm, likewise.</param>
internal sealed record PairLaw(string Family, Func<double, double, double> LnBody, Func<double, double, double> LnString)
{
    /// <summary>The body thickener's dose over its range top up to which more gives more body.</summary>
    public double Useful { get; init; } = 1;
}
