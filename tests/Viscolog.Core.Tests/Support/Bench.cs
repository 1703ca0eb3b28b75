using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Tests.Support;

/// <summary>Makes runs for tests in few words.</summary>
internal static class Bench
{
    public const string Name = "T";

    public static Thickener Thickener { get; } = new(Name) { Chemistry = ThickenerChemistry.AlkaliSwellable };

    public static Run Run(double target, params Entry[] entries) => new(new("B"), Mass.FromGrams(100))
    {
        Name = "test",
        Thickeners = [Thickener],
        Target = new Target.Value(Viscosity.FromMilliPascalSeconds(target), null),
        Entries = [.. entries],
    };

    public static Entry Dose(double grams) => new Entry.Dosed(Name, Mass.FromGrams(grams));

    public static Entry Read(double body, double? wait = null, double? ph = null, double? celsius = 23) => new Entry.Measured(new Reading
    {
        Value = new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(body)),
        Wait = wait is { } w ? TimeSpan.FromSeconds(w) : null,
        Acidity = ph is { } p ? Acidity.FromPh(p) : null,
        Temperature = celsius is { } c ? Temperature.FromCelsius(c) : null,
    });

    /// <summary>A run along an exact sigmoid law: base 1000 mPa·s, span 4, half-way 2 %, steepness 2.5.</summary>
    public static double Sigmoid(double dose) => 1000 * Math.Exp(dose <= 0 ? 0 : 4 / (1 + Math.Pow(2 / dose, 2.5)));

    public static Run AlongSigmoid(double target, params double[] increments)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        entries.Add(Read(1000));
        var dose = 0.0;
        foreach (var increment in increments)
        {
            dose += increment;
            entries.Add(Dose(increment));
            entries.Add(Read(Sigmoid(dose)));
        }

        return Run(target, [.. entries]);
    }
}
