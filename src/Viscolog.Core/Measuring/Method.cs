using System.Collections.Frozen;
using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>How a reading becomes a quantity. The set is closed: <see cref="All"/> holds every method there is.</summary>
/// <remarks>
/// The repeatabilities are defaults, to be replaced by the user's own. Of what is shown: cups 3.7 % of the seconds (ASTM D4212, 13.1.1, 44
/// mL dip cups within one laboratory; taken for all cups), Krebs 1.5 % of the units (from memory: ASTM D562 within one laboratory). Of the
/// body, from memory: rotational 3 %, direct 4 %, falling ball 8 %, slump 15 %.
/// </remarks>
public sealed record Method
{
    private readonly Func<Method, InstrumentValue, MethodSetup, Density?, Conversion> _convert;
    private readonly double _scatterPercent;
    private const double CupScatter = 3.7;

    private Method(
        string id, string words, double scatterPercent, Func<Method, InstrumentValue, MethodSetup, Density?, Conversion> convert,
        params ImmutableArray<InstrumentScale> scales)
        => (Id, Words, Repeatability, _scatterPercent, _convert, Scales, Unit)
            = (id, words, Percentage.FromPercent(scatterPercent), scatterPercent, convert, scales, scales[^1].Unit);

    /// <summary>The method's name in files and commands.</summary>
    public string Id { get; }

    /// <summary>What it is, for a reader.</summary>
    public string Words { get; }

    /// <summary>
    /// Relative standard deviation of the body from repeat readings in the middle of the method's range: one number for a run, which may
    /// state its own (see <see cref="RepeatabilityAt"/>).
    /// </summary>
    public Percentage Repeatability { get; private init; }

    /// <summary>d ln viscosity/d ln shown; 1 where the two are proportional.</summary>
    private Func<InstrumentValue, double> LnSlope { get; init; } = _ => 1;

    /// <summary>
    /// The scales that it is read on, the usual one first. A rotational viscometer shows a torque, or works the viscosity out itself.
    /// </summary>
    public ImmutableArray<InstrumentScale> Scales { get; }

    /// <summary>The unit of what it shows, where that is no torque.</summary>
    public string Unit { get; private init; }

    /// <summary>Whether it tells a yield stress, which is stated as a body (see <see cref="ConvertedReading.YieldRate"/>).</summary>
    public bool TellsYieldStress { get; private init; }

    /// <summary>A viscosity read off directly.</summary>
    public static Method Direct { get; } = new(
        "direct", "viscosity read off directly", 4, (method, value, _, _) => Conversions.AsRead(method, value), InstrumentScale.Viscosity);

    /// <summary>Every method, the direct one first.</summary>
    public static IReadOnlyList<Method> All { get; } =
    [
        Direct,
        .. Cups.All.Select(OfCup),
        new("krebs", "Krebs paddle, Krebs units", 1.5, (_, value, _, _) => KrebsScale.Convert(value.Shown), InstrumentScale.Krebs)
        {
            LnSlope = value => KrebsScale.LnSlope(value.Shown),
            Repeatability = Percentage.FromPercent(6),
        },
        new("rotational", "rotational viscometer, torque", 3, Rotational, InstrumentScale.Torque, InstrumentScale.Viscosity),
        new("falling-ball", "falling ball", 8, Fall, InstrumentScale.Plain) { Unit = "s" },
        new("slump", "slump of a cylinder", 15, Slump, InstrumentScale.Plain) { Unit = "mm", TellsYieldStress = true },
    ];

    private static FrozenDictionary<string, Method> ById { get; } = All.ToFrozenDictionary(m => m.Id, StringComparer.Ordinal);

    /// <summary>Whether the method reads such values.</summary>
    public bool Reads(InstrumentValue value) => Scales.Contains(value.Scale);

    /// <summary>
    /// Relative standard deviation of the body from repeats of this very reading: what is shown scatters, and the slope of the conversion
    /// carries that to ln viscosity.
    /// </summary>
    /// <param name="value">A value that converts.</param>
    public Percentage RepeatabilityAt(InstrumentValue value) => Percentage.FromPercent(_scatterPercent * LnSlope(value));

    /// <summary>Finds a method by its <see cref="Id"/>; null where there is none.</summary>
    public static Method? Find(string id) => ById.GetValueOrDefault(id);

    /// <summary>Converts a value of one of its scales.</summary>
    internal Conversion Convert(InstrumentValue value, MethodSetup setup, Density? density) => _convert(this, value, setup, density);

    private static Conversion Rotational(Method method, InstrumentValue value, MethodSetup setup, Density? density)
        => value is InstrumentValue.Torque torque
            ? RotationalTorque.Convert(torque.OfFullScale, setup.PerPercentTorque, torque.RevolutionsPerMinute)
            : Conversions.AsRead(method, value);

    private static Conversion Fall(Method method, InstrumentValue value, MethodSetup setup, Density? density) => value.Shown > 0
        ? FallingBall.Convert(TimeSpan.FromSeconds(Math.Min(value.Shown, 1e9)), setup, density)
        : new Conversion.Refused(new ConversionRefusal.NoFall());

    private static Conversion Slump(Method method, InstrumentValue value, MethodSetup setup, Density? density)
        => SlumpCylinder.Convert(Length.FromMillimeters(Math.Max(0, value.Shown)), setup, density);

    private static Conversion Cup(Method method, InstrumentValue value, MethodSetup setup, Density? density)
        => Cups.Convert(method, value.Duration!.Value, density);

    private static Method OfCup(CupEquation cup) => new(
        cup.Id, $"{(cup.Series is CupSeries.Iso2431 or CupSeries.D1200 ? "efflux cup" : "dip cup")} {cup.Id}", CupScatter, Cup,
        InstrumentScale.CupSeconds)
    {
        LnSlope = value => cup.LnSlope(value.Duration!.Value),
        Repeatability = Percentage.FromPercent(CupScatter * cup.LnSlope(cup.Middle)),
    };
}
