using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Makes the pots of two thickeners.</summary>
internal static class PairScenario
{
    /// <summary>
    /// The pot of a seed: its targets lie at doses within 0.3 to 0.9 of the one useful range and 0.2 to 0.8 of the other.
    /// </summary>
    public static (PracticePair Pot, string Family) Make(int seed)
    {
        var random = new Random(seed);
        var law = PairLaws.Draw(seed % HiddenLaws.FamilyCount, random);
        var body = law.Useful * (0.3 + (0.6 * random.NextDouble()));
        var strings = 0.2 + (0.6 * random.NextDouble());
        var wanted = Math.Exp(law.LnString(body, strings));
        var run = new Run(new("practice base"), Mass.FromGrams(200))
        {
            Thickeners =
            [
                new Thickener("A") { Chemistry = ThickenerChemistry.Cellulosic, UsualRange = DoseRange.Common },
                new Thickener("B") { Chemistry = ThickenerChemistry.Associative, UsualRange = DoseRange.Common },
            ],
            Target = new Target.Value(Viscosity.FromLn(law.LnBody(body, strings)), null),
            TargetString = new(Length.FromMillimeters(0.8 * wanted), Length.FromMillimeters(1.25 * wanted)),
        };
        return (new PracticePair(law, new(0.04, 0.02, 0), run, seed + 7), law.Family);
    }
}
