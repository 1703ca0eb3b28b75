using System.Collections.Frozen;
using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>How a reading becomes a quantity. The set is closed: <see cref="All"/> holds every method there is.</summary>
/// <remarks>
/// The repeatabilities are defaults from memory, to be replaced by the user's own: rotational 3 %, direct 4 %, efflux and dip cup 4 %,
/// Krebs 3 %, falling ball 8 %, slump 15 %.
/// </remarks>
public sealed record Method
{
    private readonly Func<Method, InstrumentValue, MethodSetup, Density?, Conversion> _convert;

    private Method(
        string id, string words, double repeatabilityPercent, Func<Method, InstrumentValue, MethodSetup, Density?, Conversion> convert,
        params ImmutableArray<InstrumentScale> scales)
        => (Id, Words, Repeatability, _convert, Scales, Unit)
            = (id, words, Percentage.FromPercent(repeatabilityPercent), convert, scales, scales[^1].Unit);

    /// <summary>The method's name in files and commands.</summary>
    public string Id { get; }

    /// <summary>What it is, for a reader.</summary>
    public string Words { get; }

    /// <summary>Relative standard deviation of repeat readings (from memory, editable in a run).</summary>
    public Percentage Repeatability { get; }

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
        .. Cups("efflux cup", "iso-2431-", "3", "4", "5", "6"),
        .. Cups("efflux cup", "d1200-", "1", "2", "3", "4", "5"),
        .. Cups("dip cup", "d4212-44ml-", "1", "2", "3", "4", "5"),
        .. Cups("dip cup", "d4212-23ml-", "1", "2", "2.5", "3", "3.5", "4", "5", "6"),
        new("krebs", "Krebs paddle, Krebs units", 3, (_, value, _, _) => KrebsScale.Convert(value.Shown), InstrumentScale.Krebs),
        new("rotational", "rotational viscometer, torque", 3, Rotational, InstrumentScale.Torque, InstrumentScale.Viscosity),
        new("falling-ball", "falling ball", 8, Fall, InstrumentScale.Plain) { Unit = "s" },
        new("slump", "slump of a cylinder", 15, Slump, InstrumentScale.Plain) { Unit = "mm", TellsYieldStress = true },
    ];

    private static FrozenDictionary<string, Method> ById { get; } = All.ToFrozenDictionary(m => m.Id, StringComparer.Ordinal);

    /// <summary>Whether the method reads such values.</summary>
    public bool Reads(InstrumentValue value) => Scales.Contains(value.Scale);

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
        => Measuring.Cups.Convert(method, value.Duration!.Value, density);

    private static IEnumerable<Method> Cups(string words, string series, params string[] numbers)
        => numbers.Select(n => new Method(series + n, $"{words} {series}{n}", 4, Cup, InstrumentScale.CupSeconds));
}
