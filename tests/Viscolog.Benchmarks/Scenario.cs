using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>What kind of pots are played.</summary>
internal sealed record Scenario(bool BuildUp, bool Drift, bool Published, int EarlierRuns, bool UnlikeHistory, bool Thin = false)
{
    private const double ReadingSd = 0.04;
    private const double DosingSd = 0.02;

    /// <summary>The pot of a seed, its band, and the earlier runs with its base and thickener.</summary>
    public (PracticePot Pot, ViscosityBand Band, string Family, ImmutableArray<Run> Earlier) Make(int seed)
    {
        var random = new Random(seed);
        var law = Law(seed, random);
        // A thin target lies below the usual range, where the first dose can already pass it.
        var (nearest, width) = Thin ? (0.04, 0.16) : (0.3, 0.6);
        var place = law.Useful * (nearest + (width * random.NextDouble()));
        var aim = Viscosity.FromLn(law.LnBody(place));
        var tau = BuildUp ? Math.Exp(Math.Log(6) + (random.NextDouble() * Math.Log(10))) : 0;
        var errors = new PracticeErrors(ReadingSd, DosingSd, tau);
        if (Drift)
        {
            errors = errors with { TemperatureSwing = 3, TemperatureCoefficient = Math.Max(0, 2000 + (700 * Normal(random))), OutlierShare = 0.02 };
        }

        var run = new Run(new("practice base"), Mass.FromGrams(200))
        {
            Thickeners = [new Thickener("T") { Chemistry = ThickenerChemistry.AlkaliSwellable }],
            Target = new Target.Value(aim, null),
        };
        var lots = new Random(seed + 11);
        var earlierLaw = UnlikeHistory ? InLot(Law(seed + 4, lots), 0.7 * Normal(lots), 1) : law;
        ImmutableArray<Run> earlier = [.. Enumerable.Range(0, EarlierRuns).Select(i => Earlier(earlierLaw, errors, run, lots, seed + (13 * (i + 1))))];
        return (new PracticePot(law, errors, run, seed + 7), run.Target.Band, law.Family, earlier);
    }

    private HiddenLaw Law(int seed, Random random) => Published
        ? PublishedSeries.All[seed % PublishedSeries.All.Length].ToLaw(random)
        : HiddenLaws.Draw(seed % HiddenLaws.FamilyCount, random);

    /// <summary>A run with another lot, dosed in four to six steps up to a place of its own.</summary>
    private static Run Earlier(HiddenLaw law, PracticeErrors errors, Run run, Random random, int seed)
    {
        var pot = new PracticePot(InLot(law, 0.15 * Normal(random), Math.Exp(0.08 * Normal(random))), errors, run with { Name = $"earlier {seed}" }, seed);
        pot.Read(TimeSpan.Zero);
        var steps = random.Next(4, 7);
        var end = run.BaseMass.Grams * run.Thickeners[0].UsualRange.Top.Percent / 100 * law.Useful * (0.4 + (0.5 * random.NextDouble()));
        for (var i = 0; i < steps; i++)
        {
            pot.Add(Mass.FromGrams(Math.Round(end / steps, 2)));
            pot.Read(TimeSpan.FromSeconds(errors.TimeConstantSeconds * 4));
        }

        return pot.Run;
    }

    /// <summary>The same law in another lot of base and thickener: ln of the base's body raised, the thickener's strength multiplied.</summary>
    private static HiddenLaw InLot(HiddenLaw law, double lnLevel, double potency)
        => law with { LnBody = z => law.LnBody(z * potency) + lnLevel, Useful = law.Useful / potency };

    private static double Normal(Random random)
        => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
