using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>What methods and their readings say, in sentences.</summary>
internal static class MethodWords
{
    /// <summary>Why a reading can't become a quantity, and what to do.</summary>
    public static string Of(ConversionRefusal refusal) => refusal switch
    {
        ConversionRefusal.Missing missing => Missing(missing.Part),
        ConversionRefusal.BeyondFullScale beyond
            => Say($"{beyond.Torque.Percent:0.#} % is beyond full scale; use a lower speed or a smaller spindle"),
        ConversionRefusal.OutsideCup outside => Outside(outside),
        ConversionRefusal.OutsidePaddle { IsThin: true } outside => Say($"{outside.Units:0.#} KU is outside the paddle's useful range of "
            + $"about 2 to 50 P (59 to 132 KU); use an efflux cup"),
        ConversionRefusal.OutsidePaddle outside => Say($"{outside.Units:0.#} KU is outside the paddle's useful range of about 2 to 50 P "
            + $"(59 to 132 KU); use a rotational viscometer"),
        ConversionRefusal.BallFloats => Say("the ball is not denser than the liquid and can't sink in it; use a denser ball"),
        ConversionRefusal.BallTooWide wide => Say($"the ball is {wide.Width.Percent:0} % as wide as the jar; the wall's drag is only known "
            + $"up to 30 %: use a wider jar or a smaller ball"),
        ConversionRefusal.BallTooFast fast => Say($"the ball falls too fast for Stokes' law: Re = {fast.Reynolds:0.##}, at most 0.1; use a "
            + $"ball of about {fast.Smaller.Millimeters:0.##} mm or a lighter one, or an efflux cup"),
        ConversionRefusal.NoFall => Say("the fall must take more than 0 s: enter the seconds"),
        ConversionRefusal.SlumpTooSmall small => Say($"a slump of {small.Slump.Millimeters:0.#} mm is under a twentieth of the height: the "
            + $"paste is too stiff for this cylinder; use a higher one"),
        ConversionRefusal.SlumpTooLarge large => Say($"a slump of {large.Slump.Millimeters:0.#} mm leaves almost no heap: the material is "
            + $"too thin for a slump; use a cup or a ball in a jar"),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>What to know before a reading is used.</summary>
    public static string Of(ReadingWarning warning) => warning switch
    {
        ReadingWarning.LowTorque low => Say($"torque {low.Torque.Percent:0.#} % is under 10 % of full scale: the scale's own error grows "
            + $"to {low.Error.Percent:0} % of the value"),
        ReadingWarning.BetweenOils => Say("Krebs units give only an approximate viscosity, interpolated between three oils"),
        ReadingWarning.BeyondOils => Say("Krebs units give only an approximate viscosity, extrapolated beyond the oils of 70 and 95 KU, "
            + "good to about a quarter"),
        ReadingWarning.NoJar open => Say($"no jar diameter: the wall is left out, and the viscosity comes out too high (by "
            + $"{open.Excess.Percent:0} % in a jar ten times as wide as the ball)"),
        ReadingWarning.ShortFall => Say("a fall of under 5 s is hard to time by hand; time a longer distance, or use a smaller ball"),
        ReadingWarning.NearlyFloats => Say("ball and liquid are nearly equal in density: a small error in either shifts the value a lot; "
            + "use a denser ball"),
        ReadingWarning.SmallSlump => Say("a slump under a fifth of the height: the formula reads low there, by up to 15 %; use a "
            + "higher cylinder"),
        ReadingWarning.LargeSlump => Say("a slump above 0.85 of the height says little; use a ball in a jar"),
        ReadingWarning.OddCylinder odd => Say($"the cylinder is {odd.HeightOverDiameter:0.##} times as high as wide: the formula holds for "
            + $"0.8 to 1.2"),
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    /// <summary>What a reading's value depends on besides the liquid, in a few words.</summary>
    public static string Of(ShearCondition condition) => condition.RevolutionsPerMinute is { } rpm
        ? Say($"{condition.Method.Id} at {rpm:0.###} 1/min")
        : condition.Method.Scales.Any(s => s.HasSpeed) ? Say($"{condition.Method.Id}, speed not given") : condition.Method.Id;

    /// <summary>Why readings under different shear conditions can't be one curve, and what to do.</summary>
    public static string Mixture(IEnumerable<ShearCondition> conditions)
        => Say($"the readings were taken under different shear conditions ({string.Join("; ", conditions.Select(Of))}) and are not one "
            + $"curve: keep those of one condition and void the others, or make a run of each");

    /// <summary>What would suit better.</summary>
    public static string Of(BetterChoice better) => better switch
    {
        BetterChoice.AnotherCup other
            => Say($"{CupWords.Of(other.Cup)} ({other.Cup.Id}) would suit better: about {other.About.TotalSeconds:0} s"),
        BetterChoice.Faster faster => Say($"a higher speed (about {faster.Times:0.#} times this one for a Newtonian liquid) or a larger "
            + $"spindle would suit better"),
        BetterChoice.Slower => Say("a lower speed or a smaller spindle would suit better: the reading is near full scale"),
        _ => throw new ArgumentOutOfRangeException(nameof(better), better, "not a case of the closed set"),
    };

    /// <summary>Why a reading can't be brought to another temperature, and what to do.</summary>
    public static string TooFar(Temperature at, Temperature reference)
        => Say($"{at.Celsius:0.#} °C is more than {TemperatureCorrection.GreatestDistance} °C from {reference.Celsius:0.#} °C: a "
            + $"correction that far is a guess; bring the liquid closer and read again");

    /// <summary>How a reading shears its liquid.</summary>
    public static string Shear(ConvertedReading reading) => reading.Formula switch
    {
        ReadingFormula.AsRead => Say("that of the instrument that read it"),
        ReadingFormula.Cup => reading.Rate is { } rate
            ? Say($"flow through an orifice, slower as the cup empties: about {rate.PerSecond:0} 1/s on average at its wall; a "
                + $"shear-thinning liquid reads thinner than it is at rest")
            : Say("flow through an orifice, slower as the cup empties; a shear-thinning liquid reads thinner than it is at rest"),
        ReadingFormula.Krebs => Say("a paddle stirring at 200 1/min, some tens of 1/s; a shear-thinning liquid reads thinner than it is at "
            + "rest"),
        ReadingFormula.Torque => reading.RevolutionsPerMinute is { } rpm
            ? Say($"steady rotation of one spindle at {rpm:0.###} 1/min; another speed or spindle is another shear condition unless the "
                + $"liquid is Newtonian")
            : Say("steady rotation of one spindle; another speed or spindle is another shear condition unless the liquid is Newtonian"),
        ReadingFormula.FallingBall => Say($"a ball creeping through the liquid: at most {reading.Rate!.Value.PerSecond:0.###} 1/s at its "
            + $"waist, nearly at rest; a shear-thinning liquid reads thicker than in a cup"),
        ReadingFormula.Slump => Say("no shear at all: the stress at which it stops flowing under its own weight (a yield stress, not a "
            + "viscosity)"),
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Formula, "not a formula"),
    };

    /// <summary>Where formula and figures come from.</summary>
    public static string Source(ConvertedReading reading) => reading.Formula switch
    {
        ReadingFormula.AsRead => Say("as read"),
        ReadingFormula.Cup => Source(reading.Cup!),
        ReadingFormula.Krebs => Say("ASTM D562-10, note 1: three standard oils, interpolated in ln"),
        ReadingFormula.Torque => Say("the instrument's factor times torque"),
        ReadingFormula.FallingBall => Say("Stokes (1851) with Faxén's wall correction (1922), from memory"),
        ReadingFormula.Slump => Say("Pashias, Boger, Summers and Glenister, J. Rheol. 40 (1996) 1179; formula from memory"),
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Formula, "not a formula"),
    };

    private static string Source(CupEquation cup) => cup.Series switch
    {
        CupSeries.Iso2431 => cup.IsChecked
            ? Say("ISO 2431: v = a*t - b/t (coefficients from memory, checked against printed cup tables to 1.5 %)")
            : Say("ISO 2431: v = a*t - b/t (coefficients from memory, not checked: no table of this cup was found)"),
        CupSeries.D1200 => Say("ASTM D1200: v = a*(t - t0) (published equation)"),
        _ => Say("ASTM D4212 dip cup: v = a*(t - t0) (a maker's published equation)"),
    };

    private static string Missing(MissingPart part) => part switch
    {
        MissingPart.CupDensity => Say("a cup's seconds give the kinematic viscosity; the dynamic one needs the density: weigh 100 mL of "
            + "the liquid (run file: base_density_g_ml; convert: --density)"),
        MissingPart.TorqueFactor => Say("a torque needs the instrument's factor: mPa·s for each % at this spindle and speed (run file: "
            + "factor_mpas_per_pct; convert: --factor)"),
        MissingPart.Ball => Say("a falling ball needs its diameter and density and the distance that is timed (run file: "
            + "ball_diameter_mm, ball_density_g_ml, fall_mm; convert: --ball, --ball-density, --fall)"),
        MissingPart.BallLiquidDensity => Say("a falling ball needs the liquid's density: weigh 100 mL of it (run file: base_density_g_ml; "
            + "convert: --density)"),
        MissingPart.CylinderHeight
            => Say("a slump needs the cylinder's height (run file: cylinder_height_mm; convert: --height)"),
        MissingPart.PasteDensity => Say("a slump needs the paste's density: weigh 100 mL of it (run file: base_density_g_ml; convert: "
            + "--density)"),
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "not a part"),
    };

    private static string Outside(ConversionRefusal.OutsideCup outside)
    {
        var cup = outside.Cup;
        var read = Say($"{outside.Time.TotalSeconds:0.#} s is outside the {cup.Least.TotalSeconds:0} to {cup.Most.TotalSeconds:0} s within "
            + $"which {CupWords.Of(cup)} gives a viscosity");
        return outside switch
        {
            { Instead: { } next, About: { } about } => Say($"{read}; {CupWords.Of(next)} ({next.Id}) fits: about {about.TotalSeconds:0} s"),
            { Instead: { } finest } => Say($"{read}; try one with a finer orifice, down to {CupWords.Of(finest)} ({finest.Id})"),
            _ => outside.Time > cup.Most
                ? Say($"{read}; use a cup with a wider orifice, or a rotational viscometer")
                : Say($"{read}; use a cup with a finer orifice"),
        };
    }
}
