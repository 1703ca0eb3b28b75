using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>A virtual pot with a hidden law: it takes doses and answers readings with build-up and error, as a real one would.</summary>
public sealed class PracticePot
{
    private readonly PracticeErrors errors;
    private readonly Random random;
    private readonly double phase;
    private HiddenPot pot;

    /// <summary>Makes a pot.</summary>
    /// <param name="law">The law that hides in it.</param>
    /// <param name="errors">How it and its user err.</param>
    /// <param name="run">The run as it begins: base, one thickener, target, no entries.</param>
    /// <param name="seed">Makes the errors repeat.</param>
    public PracticePot(HiddenLaw law, PracticeErrors errors, Run run, int seed)
    {
        (this.errors, Run) = (errors, run);
        pot = new(law, TimeSpan.FromSeconds(errors.TimeConstantSeconds), run.Thickeners[0].UsualRange.Top, run.BaseMass);
        random = new(seed);
        phase = 2 * Math.PI * new Random(seed + 1).NextDouble();
    }

    /// <summary>What the user has written down so far.</summary>
    public Run Run { get; private set; }

    /// <summary>The true settled body now.</summary>
    public Viscosity TrueBody => pot.Settled;

    /// <summary>Pours thickener in and stirs it; the scale shows what was asked for, the pot gets it within the dosing error.</summary>
    /// <param name="poured">Grams on the scale.</param>
    public void Add(Mass poured)
    {
        pot = pot.StirredIn(Mass.FromGrams(Math.Max(0, poured.Grams * (1 + (errors.DosingSd * Normal())))), Mass.None);
        Run = Run with { Entries = Run.Entries.Add(new Entry.Dosed(Run.Thickeners[0].Name, poured)) };
    }

    /// <summary>Lets the pot stand and reads it.</summary>
    /// <param name="more">Further standing time.</param>
    public void Read(TimeSpan more)
    {
        pot = pot.Stood(more);
        var temperature = TemperatureNow();
        var distance = (1 / temperature.Kelvin) - (1 / Run.ReferenceTemperatureInForce.Kelvin);
        var ln = pot.LnNow + (errors.TemperatureCoefficient * distance) + (errors.ReadingSd * Normal());
        if (errors.OutlierShare > 0 && random.NextDouble() < errors.OutlierShare)
        {
            ln += errors.OutlierSd * Normal();
        }

        var reading = new Reading
        {
            Value = new InstrumentValue.Direct(Viscosity.FromLn(ln)),
            Temperature = temperature,
            Wait = pot.Standing,
        };
        Run = Run with { Entries = Run.Entries.Add(new Entry.Measured(reading)) };
    }

    /// <summary>A slow swing about the reference, a full turn in about twelve readings.</summary>
    private Temperature TemperatureNow()
    {
        var reference = Run.ReferenceTemperatureInForce;
        return errors.TemperatureSwing == 0
            ? reference
            : Temperature.FromCelsius(reference.Celsius + (errors.TemperatureSwing * Math.Sin(phase + (0.5 * Run.Entries.Length))));
    }

    private double Normal()
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
        return radius * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
