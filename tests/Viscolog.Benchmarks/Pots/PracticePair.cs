using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks.Pots;

/// <summary>
/// A virtual pot for two thickeners with a hidden law: it takes doses of either and answers readings of body and string with error.
/// </summary>
internal sealed class PracticePair
{
    private readonly PairLaw _law;
    private readonly PracticeErrors _errors;
    private readonly PairRoles _roles;
    private readonly Random _random;
    private double _baseGrams;
    private double _bodyGrams;
    private double _stringGrams;

    /// <summary>Makes a pot that is settled at once.</summary>
    /// <param name="law">The law that hides in it.</param>
    /// <param name="errors">How it and its user err; its time constant is left aside.</param>
    /// <param name="run">The run as it begins: base, two thickeners, targets, no entries.</param>
    /// <param name="seed">Makes the errors repeat.</param>
    /// <exception cref="ArgumentException">The run does not name two thickeners.</exception>
    public PracticePair(PairLaw law, PracticeErrors errors, Run run, int seed)
    {
        (_law, _errors, Run) = (law, errors, run);
        _roles = PairRoles.Of(run) ?? throw new ArgumentException("the run must name two thickeners", nameof(run));
        _random = new(seed);
        _baseGrams = run.BaseMass.Grams;
    }

    /// <summary>What the user has written down so far.</summary>
    public Run Run { get; private set; }

    /// <summary>The true body now.</summary>
    public Viscosity TrueBody => Viscosity.FromLn(_law.LnBody(BodyDose, StringDose));

    /// <summary>The true string now.</summary>
    public Length TrueString => Length.FromMillimeters(Math.Exp(_law.LnString(BodyDose, StringDose)));

    private double BodyDose => _bodyGrams / _baseGrams * 100 / _roles.BodyThickener.UsualRange.Top.Percent;

    private double StringDose => _stringGrams / _baseGrams * 100 / _roles.StringThickener.UsualRange.Top.Percent;

    /// <summary>Pours thickener in and stirs it; the scale shows what was asked for, the pot gets it within the dosing error.</summary>
    /// <param name="thickener">The name of one of the run's thickeners.</param>
    /// <param name="poured">Grams on the scale.</param>
    public void Add(string thickener, Mass poured)
    {
        var grams = poured.Grams * (1 + (_errors.DosingSd * Normal()));
        if (thickener == _roles.BodyThickener.Name)
        {
            _bodyGrams += grams;
        }
        else
        {
            _stringGrams += grams;
        }

        Run = Run with { Entries = Run.Entries.Add(new Entry.Dosed(thickener, poured)) };
    }

    /// <summary>Lets the pot down with base; large amounts are weighed well.</summary>
    /// <param name="added">Grams of base.</param>
    public void LetDown(Mass added)
    {
        _baseGrams += added.Grams;
        Run = Run with { Entries = Run.Entries.Add(new Entry.LetDown(added)) };
    }

    /// <summary>Reads the pot.</summary>
    /// <param name="body">Whether the body is read.</param>
    /// <param name="strings">Whether the string is drawn.</param>
    public void Read(bool body, bool strings)
    {
        var reading = new Reading
        {
            Value = body ? new InstrumentValue.Direct(Viscosity.FromLn(TrueBody.Ln + (_errors.ReadingSd * Normal()))) : null,
            StringLength = strings ? Length.FromMillimeters(TrueString.Millimeters * Math.Exp(_errors.StringSd * Normal())) : null,
            Temperature = Run.ReferenceTemperatureInForce,
        };
        Run = Run with { Entries = Run.Entries.Add(new Entry.Measured(reading)) };
    }

    private double Normal()
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
        return radius * Math.Cos(2 * Math.PI * _random.NextDouble());
    }
}
