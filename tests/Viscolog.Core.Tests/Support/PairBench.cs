using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Tests.Support;

/// <summary>
/// Runs with two thickeners, A for the body and S for the string, in few words; 100 g of base, so that grams are per cent.
/// </summary>
internal static class PairBench
{
    /// <summary>Exact laws that the model can hold: body 1000·e^(0.8a + 0.3s), string 6·e^(0.5s + 0.05a).</summary>
    public static double Body(double a, double s) => 1000 * Math.Exp((0.8 * a) + (0.3 * s));

    public static double Length(double a, double s) => 6 * Math.Exp((0.5 * s) + (0.05 * a));

    public static Run Run(double target, (double Low, double High)? strings, params Entry[] entries) => new(new("B"), Mass.FromGrams(100))
    {
        Name = "test",
        Thickeners =
        [
            new Thickener("A") { UsualRange = DoseRange.Common },
            new Thickener("S") { Chemistry = ThickenerChemistry.Associative, UsualRange = DoseRange.Common },
        ],
        Target = new Target.Value(Viscosity.FromMilliPascalSeconds(target), null),
        TargetString = strings is { } s ? new(Quantities.Length.FromMillimeters(s.Low), Quantities.Length.FromMillimeters(s.High)) : null,
        Entries = [.. entries],
    };

    public static Entry Dose(string name, double grams) => new Entry.Dosed(name, Mass.FromGrams(grams));

    public static Entry Read(double? body, double? length) => new Entry.Measured(new Reading
    {
        Value = body is { } b ? new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(b)) : null,
        StringLength = length is { } l ? Quantities.Length.FromMillimeters(l) : null,
        Temperature = Temperature.FromCelsius(23),
    });

    /// <summary>A run along the exact laws, body and string read after each dose.</summary>
    public static Run Along(double target, (double, double) strings, params (string Name, double Grams)[] doses)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        entries.Add(Read(Body(0, 0), Length(0, 0)));
        var (a, s) = (0.0, 0.0);
        foreach (var (name, grams) in doses)
        {
            (a, s) = name == "A" ? (a + grams, s) : (a, s + grams);
            entries.Add(Dose(name, grams));
            entries.Add(Read(Body(a, s), Length(a, s)));
        }

        return Run(target, strings, [.. entries]);
    }

    public static Advice Advise(Run run) => Studied.Of(new(run)).Advice!;

    public static Posterior Posterior(Run run) => Xunit.Assert.IsType<PosteriorOutcome.Found>(Posteriors.OfPair(run, [])).Posterior;
}
