using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>Turns what any method's instrument showed into a quantity.</summary>
public static class Conversions
{
    /// <summary>Converts one reading.</summary>
    /// <param name="method">How it was read.</param>
    /// <param name="value">What was shown; of a kind that the method reads.</param>
    /// <param name="setup">What else the method needs.</param>
    /// <param name="density">The liquid's; null where it is not known.</param>
    /// <exception cref="ArgumentException">The method does not read that kind of value.</exception>
    public static Conversion Of(Method method, InstrumentValue value, MethodSetup setup, Density? density) => method.Reads(value)
        ? method.Convert(value, setup, density)
        : throw new ArgumentException($"the method {method.Id} reads no {value.GetType().Name}", nameof(value));

    /// <summary>Converts one reading to the body that dose–response curves are made of.</summary>
    /// <inheritdoc cref="Of"/>
    public static Conversion ToBody(Method method, InstrumentValue value, MethodSetup setup, Density? density)
        => Of(method, value, setup, density) is var made && made is Conversion.Converted { Reading.Body: null }
            ? Missing(MissingPart.CupDensity) : made;

    /// <summary>A viscosity that the instrument worked out itself.</summary>
    internal static Conversion.Converted AsRead(Method method, InstrumentValue value) => new(new(ReadingFormula.AsRead)
    {
        Dynamic = Viscosity.FromMilliPascalSeconds(value.Shown),
        Repeatability = method.Repeatability,
    });

    /// <summary>A refusal for want of something.</summary>
    internal static Conversion.Refused Missing(MissingPart part) => new(new ConversionRefusal.Missing(part));
}

/// <summary>What came of turning a reading into a quantity. The set of cases is closed.</summary>
public abstract record Conversion
{
    private protected Conversion()
    {
    }

    /// <summary>It became one.</summary>
    /// <param name="Reading">What.</param>
    public sealed record Converted(ConvertedReading Reading) : Conversion;

    /// <summary>It can't.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Refused(ConversionRefusal Reason) : Conversion;
}
