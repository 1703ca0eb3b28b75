namespace Viscolog.Tables;

/// <summary>Which numbers a key or column takes.</summary>
/// <param name="Unit">The unit as a person reads it; empty where there is none.</param>
/// <param name="Least">The least number allowed.</param>
/// <param name="Most">The greatest allowed: far beyond any bench, so that sums stay finite.</param>
/// <param name="Above">Whether the least itself is not allowed.</param>
internal sealed record NumberRange(string Unit, double Least, double Most, bool Above = false)
{
    /// <summary>Grams of something that may be absent.</summary>
    public static NumberRange Grams { get; } = new("g", 0, 1e9);

    /// <summary>Grams of something that must be there; below 1 mg nothing can be said of a pot.</summary>
    public static NumberRange GramsPresent { get; } = Grams with { Least = 0.001 };

    /// <summary>Seconds, zero among them.</summary>
    public static NumberRange Seconds { get; } = new("s", 0, 1e9);

    /// <summary>A viscosity; a tenth of that of air is the least.</summary>
    public static NumberRange Viscosity { get; } = new("mPa·s", 0.001, 1e12);

    /// <summary>A viscosity written in Pa·s and read as mPa·s.</summary>
    public static NumberRange PascalSeconds { get; } = Viscosity with { Unit = "Pa·s", Shift = 3 };

    /// <summary>A temperature, from absolute zero up.</summary>
    public static NumberRange Temperature { get; } = new("°C", -273.15, 1e4);

    /// <summary>A density.</summary>
    public static NumberRange Density { get; } = new("g/mL", 0.001, 1e3);

    /// <summary>The size of something built.</summary>
    public static NumberRange Millimeters { get; } = new("mm", 0.001, 1e6);

    /// <summary>A dose.</summary>
    public static NumberRange Dose { get; } = new("g per 100 g of base", 0, 1e4);

    /// <summary>A percentage above 0.</summary>
    public static NumberRange Percent { get; } = new("%", 0, 100, Above: true);

    /// <summary>Any number.</summary>
    public static NumberRange Any { get; } = new("", -1e15, 1e15);

    /// <summary>The power of ten between what is written and what is read.</summary>
    public int Shift { get; init; }

    /// <summary>Whether the number, as it is read, is allowed.</summary>
    public bool Allows(double value) => value <= Most && (Above ? value > Least : value >= Least);

    /// <summary>What is allowed, in words.</summary>
    public string Words(double? read)
    {
        // Decimal, so that a bound in another unit shows no rounding.
        var written = (decimal)Math.Pow(10, -Shift);
        var (least, most) = ((decimal)Least * written, (decimal)Most * written);
        var unit = Unit.Length == 0 ? "" : $" in {Unit}";
        if (Least == Any.Least)
        {
            return read is null ? $"a number{unit}" : FormattableString.Invariant($"a number{unit} of at most {most} in size");
        }

        if (Most <= 100 && !Above)
        {
            return FormattableString.Invariant($"a number{unit}, between {least} and {most}");
        }

        var low = (Least, Above) switch
        {
            (0, true) => "above 0",
            (0, false) => "0 or more",
            (_, true) => FormattableString.Invariant($"above {least}"),
            _ => FormattableString.Invariant($"at least {least}"),
        };
        var top = read > Most || Most <= 100 ? FormattableString.Invariant($" and at most {most:0.###}") : "";
        return $"a number{unit}, {low}{top}";
    }
}
