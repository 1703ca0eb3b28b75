using System.Collections.Immutable;
using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>What kind of pots are played.</summary>
internal sealed record Scenario(string Pots, string BuildUp, int EarlierRuns)
{
    private const double DosingSd = 0.02;

    public bool Drift { get; init; }

    public bool UnlikeHistory { get; init; }

    public bool Thin { get; init; }

    public double ReadingSd { get; init; } = 0.04;

    public double TemperatureOffset { get; init; }

    /// <summary>Whether slow pots are said to be alkali-swellable, of which seconds to a minute are expected.</summary>
    public bool SaidQuick { get; init; }

    /// <summary>The pot of a seed, its band, and the earlier runs with its base and thickener.</summary>
    public (PracticePot Pot, ViscosityBand Band, string Family, ImmutableArray<Run> Earlier) Make(int seed)
    {
        var random = new Random(seed);
        var law = Law(seed, random);
        // A thin target lies below the usual range, where the first dose can already pass it.
        var (nearest, width) = Thin ? (0.04, 0.16) : Pots is "own" or "published" ? (0.3, 0.6) : (0.12, 0.78);
        nearest = Math.Max(nearest, law.Least);
        var place = law.Useful * (nearest + (Math.Min(width, 0.9 - nearest) * random.NextDouble()));
        var aim = Viscosity.FromLn(law.LnBody(place));
        var (tau, stretch) = TimeOf(random);
        var errors = new PracticeErrors(ReadingSd, DosingSd, tau)
        {
            Stretch = stretch,
            TemperatureOffset = TemperatureOffset,
            TemperatureCoefficient = TemperatureOffset == 0 ? 2000 : Math.Max(300, 2000 + (700 * Normal(random))),
        };
        if (Drift)
        {
            errors = errors with
            {
                TemperatureSwing = 3,
                TemperatureCoefficient = Math.Max(0, 2000 + (700 * Normal(random))),
                OutlierShare = 0.02,
            };
        }

        var run = new Run(new("practice base"), Mass.FromGrams(200))
        {
            Thickeners =
            [
                new Thickener("T")
                {
                    Chemistry = Pots == "own" && (SaidQuick || BuildUp != "slow")
                        ? ThickenerChemistry.AlkaliSwellable
                        : ThickenerChemistry.Other,
                },
            ],
            Target = new Target.Value(aim, null),
        };
        var lots = new Random(seed + 11);
        var earlierLaw = UnlikeHistory ? InLot(Law(seed + 4, lots), 0.7 * Normal(lots), 1) : law;
        ImmutableArray<Run> earlier =
        [
            .. Enumerable.Range(0, EarlierRuns).Select(i => Earlier(earlierLaw, errors, run, lots, seed + (13 * (i + 1)))),
        ];
        return (new PracticePot(law, errors, run, seed + 7), run.Target.Band, law.Family, earlier);
    }

    /// <summary>τ in s and β of the build-up; spread evenly, τ on the logarithm.</summary>
    private (double Tau, double Stretch) TimeOf(Random random)
    {
        double Log(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
        return BuildUp switch
        {
            "none" => (0, 1),
            "first order" => (Math.Exp(Math.Log(6) + (random.NextDouble() * Math.Log(10))), 1),
            "stretched" => (Log(6, 60), 0.4 + (0.6 * random.NextDouble())),
            "slow" => (Log(100, 900), 0.5 + (0.5 * random.NextDouble())),
            _ => throw new ArgumentOutOfRangeException(nameof(random), BuildUp, "none, first order, stretched or slow"),
        };
    }

    /// <summary>Laws by seed: of a kind in turn. Lots of real materials lie 8 % apart in potency.</summary>
    private HiddenLaw Law(int seed, Random random) => Pots switch
    {
        "own" => HiddenLaws.Draw(seed % HiddenLaws.FamilyCount, random),
        "published" => PublishedSeries.All[seed % PublishedSeries.All.Length].ToLaw(random),
        "series" => InLot(
            PublishedSeries.Thickeners[seed % PublishedSeries.Thickeners.Length].ToLaw(random), 0, Math.Exp(0.08 * Normal(random))),
        "threshold" => RealLaws.Threshold(random),
        "sharp-threshold" => RealLaws.SharpThreshold(random),
        "real" => InLot(RealLaws.Draw(seed % RealLaws.Count, random), 0, Math.Exp(0.08 * Normal(random))),
        "real-tune" => InLot(RealLaws.Draw(2 * (seed % (RealLaws.Count / 2)), random), 0, Math.Exp(0.08 * Normal(random))),
        "real-left-out" => InLot(RealLaws.Draw((2 * (seed % (RealLaws.Count / 2))) + 1, random), 0, Math.Exp(0.08 * Normal(random))),
        _ => throw new ArgumentOutOfRangeException(
            nameof(seed), Pots, "own, published, series, threshold, real, real-tune or real-left-out"),
    };

    /// <summary>A run with another lot, dosed in four to six steps up to a place of its own.</summary>
    private static Run Earlier(HiddenLaw law, PracticeErrors errors, Run run, Random random, int seed)
    {
        var pot = new PracticePot(
            InLot(law, 0.15 * Normal(random), Math.Exp(0.08 * Normal(random))),
            errors,
            run with { Name = $"earlier {seed}" },
            seed);
        pot.Read(TimeSpan.Zero);
        var steps = random.Next(4, 7);
        var end = run.BaseMass.Grams * run.Thickeners[0].UsualRange.Top.Percent / 100 * law.Useful * (0.4 + (0.5 * random.NextDouble()));
        for (var i = 0; i < steps; i++)
        {
            pot.Add(Mass.FromGrams(Math.Round(end / steps, 2)));
            pot.Read(TimeSpan.FromSeconds(errors.TimeConstantSeconds * Math.Pow(4, 1 / errors.Stretch)));
        }

        return pot.Run;
    }

    /// <summary>
    /// The same law in another lot of base and thickener: ln of the base's body raised, the thickener's strength multiplied.
    /// </summary>
    private static HiddenLaw InLot(HiddenLaw law, double lnLevel, double potency)
        => law with
        {
            LnBody = z => law.LnBody(z * potency) + lnLevel,
            Useful = Math.Min(1, law.Useful / potency),
            Least = law.Least / potency,
        };

    private static double Normal(Random random)
        => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
