using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>What methods and their readings say, in sentences.</summary>
internal static class MethodWords
{
    /// <summary>Why a reading can't become a quantity, and what to do.</summary>
    public static string Of(ConversionRefusal refusal) => ReadingSentences.Of(refusal);

    /// <summary>What to know before a reading is used.</summary>
    public static string Of(ReadingWarning warning) => ReadingSentences.Of(warning);

    /// <summary>What would suit better.</summary>
    public static string Of(BetterChoice better) => better switch
    {
        BetterChoice.AnotherCup other => string.Create(CultureInfo.InvariantCulture,
            $"{other.Cup.Name} ({other.Cup.Id}) would suit better: about {other.About.TotalSeconds:0} s"),
        BetterChoice.Faster faster => string.Create(CultureInfo.InvariantCulture,
            $"a higher speed (about {faster.Times:0.#} times this one for a Newtonian liquid) or a larger spindle would suit better"),
        BetterChoice.Slower => "a lower speed or a smaller spindle would suit better: the reading is near full scale",
        _ => throw new ArgumentOutOfRangeException(nameof(better), better, "not a case of the closed set"),
    };

    /// <summary>Why a reading can't be brought to another temperature, and what to do.</summary>
    public static string TooFar(Temperature at, Temperature reference) => string.Create(CultureInfo.InvariantCulture,
        $"{at.Celsius:0.#} °C is more than {TemperatureCorrection.GreatestDistance} °C from {reference.Celsius:0.#} °C: a correction that "
            + $"far is a guess; bring the liquid nearer and read again");

    /// <summary>How a reading shears its liquid.</summary>
    public static string Shear(ConvertedReading reading) => reading.Formula switch
    {
        ReadingFormula.AsRead => "that of the instrument which showed it",
        ReadingFormula.Cup => "flow through an orifice, slower as the cup empties"
            + (reading.Rate is { } rate
                ? string.Create(CultureInfo.InvariantCulture, $": about {rate.PerSecond:0} 1/s on average at its wall") : "")
            + "; a liquid that thins under shear reads thinner than it stands",
        ReadingFormula.Krebs => "a paddle stirring at 200 1/min, some tens of 1/s; a liquid that thins under shear reads thinner than it "
            + "stands",
        ReadingFormula.Torque => "steady rotation of one spindle"
            + (reading.RevolutionsPerMinute is { } rpm ? string.Create(CultureInfo.InvariantCulture, $" at {rpm:0.###} 1/min") : "")
            + "; another speed or spindle is another shear condition unless the liquid is Newtonian",
        ReadingFormula.FallingBall => string.Create(CultureInfo.InvariantCulture, $"a ball creeping through the liquid: at most "
            + $"{reading.Rate!.Value.PerSecond:0.###} 1/s at its waist, nearly at rest; a liquid that thins under shear reads thicker "
            + $"than in a cup"),
        ReadingFormula.Slump => "no shear at all: the stress at which it stops flowing under its own weight (a yield stress, no viscosity)",
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Formula, "not a formula"),
    };

    /// <summary>Where formula and figures come from.</summary>
    public static string Source(ConvertedReading reading) => reading.Formula switch
    {
        ReadingFormula.AsRead => "as read",
        ReadingFormula.Cup => Source(reading.Cup!),
        ReadingFormula.Krebs => "ASTM D562-10, note 1: three standard oils, interpolated in ln",
        ReadingFormula.Torque => "the instrument's factor times torque",
        ReadingFormula.FallingBall => "Stokes (1851) with Faxén's wall correction (1922), from memory",
        ReadingFormula.Slump => "Pashias, Boger, Summers and Glenister, J. Rheol. 40 (1996) 1179; formula from memory",
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Formula, "not a formula"),
    };

    private static string Source(CupEquation cup) => cup.Series switch
    {
        CupSeries.Iso2431 => "ISO 2431: v = a*t - b/t (coefficients from memory, "
            + (cup.IsChecked ? "checked against printed cup tables to 1.5 %)" : "not checked: no table of this cup was found)"),
        CupSeries.D1200 => "ASTM D1200: v = a*(t - t0) (published equation)",
        _ => "ASTM D4212 dip cup: v = a*(t - t0) (a maker's published equation)",
    };
}
