using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>
/// A bound: knows the families, how often each comes and how large the errors are, and weighs many laws drawn from them by the readings.
/// Same rule of choice as the program's: the likeliest dose in band within the risk where that is worth it, else the largest within the
/// risk.
/// </summary>
internal sealed class IdealPlayer
{
    private const int LawsOfFamily = 3000;
    private const int Grid = 60;
    private const double ReadingSd = 0.05;
    private readonly double[][] laws;

    public IdealPlayer()
    {
        // Seeds far from those of any pot.
        var random = new Random(-77);
        laws = [.. Enumerable.Range(0, HiddenLaws.FamilyCount * LawsOfFamily).Select(i =>
        {
            var law = HiddenLaws.Draw(i % HiddenLaws.FamilyCount, random);
            return Enumerable.Range(0, Grid + 1).Select(j => law.LnBody(1.2 * j / Grid) - law.LnBody(0)).ToArray();
        })];
    }

    public Played Play(PracticePot pot, double risk)
    {
        var band = pot.Run.Target!.Band;
        var top = pot.Run.Thickeners[0].UsualRange.Top.Percent;
        var readings = new List<(double Z, double Ln)>();
        var (z, doses, reads) = (0.0, 0, 0);
        for (var move = 0; move < 60; move++)
        {
            pot.Read(TimeSpan.FromSeconds(300));
            reads++;
            readings.Add((z, SimplePlayers.LastLn(pot)));
            var (weights, levels, sd) = Weigh(readings);
            (double In, double Over) Chances(double at)
            {
                var (inBand, over) = (0.0, 0.0);
                for (var i = 0; i < laws.Length; i++)
                {
                    if (weights[i] > 0)
                    {
                        var ln = levels[i] + Rise(i, at);
                        var above = Above(ln, sd, band.High.Ln);
                        over += weights[i] * above;
                        inBand += weights[i] * (Above(ln, sd, band.Low.Ln) - above);
                    }
                }

                return (inBand, over);
            }

            var now = Chances(z);
            if (now.In >= 0.9 || now.Over >= 0.5 || z >= 1.1)
            {
                break;
            }

            var (best, bestChance, largest) = (z, 0.0, z);
            for (var i = 1; i <= 40; i++)
            {
                var at = z + (0.3 * i / 40);
                var chances = Chances(at);
                if (chances.Over > risk)
                {
                    break;
                }

                largest = at;
                (best, bestChance) = chances.In > bestChance ? (at, chances.In) : (best, bestChance);
            }

            var next = bestChance >= 0.55 ? best : largest;
            if (next <= z || (now.In >= 0.5 && bestChance < now.In + 0.02))
            {
                continue;
            }

            pot.Add(Mass.FromGrams((next - z) * top * pot.Run.BaseMass.Grams / 100));
            (z, doses) = (next, doses + 1);
        }

        return new(doses, reads, 0);
    }

    private (double[] Weights, double[] Levels, double Sd) Weigh(List<(double Z, double Ln)> readings)
    {
        var (weights, levels) = (new double[laws.Length], new double[laws.Length]);
        var least = double.PositiveInfinity;
        for (var i = 0; i < laws.Length; i++)
        {
            levels[i] = readings.Average(r => r.Ln - Rise(i, r.Z));
            weights[i] = readings.Sum(r => Square((r.Ln - Rise(i, r.Z) - levels[i]) / ReadingSd)) / 2;
            least = Math.Min(least, weights[i]);
        }

        var sum = 0.0;
        for (var i = 0; i < laws.Length; i++)
        {
            weights[i] = weights[i] - least > 20 ? 0 : Math.Exp(least - weights[i]);
            sum += weights[i];
        }

        return ([.. weights.Select(w => w / sum)], levels, ReadingSd / Math.Sqrt(readings.Count));
    }

    private double Rise(int law, double z)
    {
        var place = Math.Clamp(z / 1.2 * Grid, 0, Grid - 1e-9);
        var left = (int)place;
        return laws[law][left] + ((place - left) * (laws[law][left + 1] - laws[law][left]));
    }

    private static double Above(double ln, double sd, double bound) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, (ln - bound) / sd);

    private static double Square(double value) => value * value;
}
