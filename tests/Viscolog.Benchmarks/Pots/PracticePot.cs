using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks.Pots;

/// <summary>A virtual pot with a hidden law: it takes doses and answers readings with build-up and error, as a real one would.</summary>
internal sealed class PracticePot
{
    private readonly PracticeErrors _errors;
    private readonly Random _random;
    private readonly double _phase;
    private HiddenPot _pot;

    /// <summary>Makes a pot.</summary>
    /// <param name="law">The law that hides in it.</param>
    /// <param name="errors">How it and its user err.</param>
    /// <param name="run">The run as it begins: base, one thickener, target, no entries.</param>
    /// <param name="seed">Makes the errors repeat.</param>
    public PracticePot(HiddenLaw law, PracticeErrors errors, Run run, int seed)
    {
        (_errors, Run) = (errors, run);
        _pot = new(
            law,
            TimeSpan.FromSeconds(errors.TimeConstantSeconds),
            run.Thickeners[0].UsualRange.Top,
            run.BaseMass)
        { Stretch = errors.Stretch };
        _random = new(seed);
        _phase = 2 * Math.PI * new Random(seed + 1).NextDouble();
    }

    /// <summary>What the user has written down so far.</summary>
    public Run Run { get; private set; }

    /// <summary>The true settled body now.</summary>
    public Viscosity TrueBody => _pot.Settled;

    /// <summary>Pours thickener in and stirs it; the scale shows what was asked for, the pot gets it within the dosing error.</summary>
    /// <param name="poured">Grams on the scale.</param>
    public void Add(Mass poured)
    {
        _pot = _pot.StirredIn(Mass.FromGrams(Math.Max(0, poured.Grams * (1 + (_errors.DosingSd * Normal())))), Mass.None);
        Run = Run with { Entries = Run.Entries.Add(new Entry.Dosed(Run.Thickeners[0].Name, poured)) };
    }

    /// <summary>Stirs base in.</summary>
    /// <param name="base">Grams on the scale, which are what goes in.</param>
    public void LetDown(Mass @base)
    {
        _pot = _pot.StirredIn(Mass.None, @base);
        Run = Run with { Entries = Run.Entries.Add(new Entry.LetDown(@base)) };
    }

    /// <summary>Lets the pot stand and reads it.</summary>
    /// <param name="more">Further standing time.</param>
    public void Read(TimeSpan more)
    {
        _pot = _pot.Stood(more);
        var temperature = TemperatureNow();
        var distance = TemperatureCorrection.Distance(temperature, Run.ReferenceTemperatureInForce);
        var ln = _pot.LnNow - (_errors.TemperatureCoefficient * distance) + (_errors.ReadingSd * Normal());
        if (_errors.OutlierShare > 0 && _random.NextDouble() < _errors.OutlierShare)
        {
            ln += _errors.OutlierSd * Normal();
        }

        var reading = new Reading
        {
            Value = new InstrumentValue.Direct(Viscosity.FromLn(ln)),
            Temperature = temperature,
            Wait = _pot.Standing,
        };
        Run = Run with { Entries = Run.Entries.Add(new Entry.Measured(reading)) };
    }

    /// <summary>A slow swing about the reference, a full turn in about twelve readings.</summary>
    private Temperature TemperatureNow()
    {
        var reference = Run.ReferenceTemperatureInForce;
        return _errors.TemperatureSwing == 0 && _errors.TemperatureOffset == 0
            ? reference
            : Temperature.FromCelsius(
                reference.Celsius + _errors.TemperatureOffset + (_errors.TemperatureSwing * Math.Sin(_phase + (0.5 * Run.Entries.Length))));
    }

    private double Normal()
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
        return radius * Math.Cos(2 * Math.PI * _random.NextDouble());
    }
}
