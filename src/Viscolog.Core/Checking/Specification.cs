using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>What a product's batch must meet.</summary>
/// <param name="Name">The product; not empty.</param>
public sealed record Specification(string Name)
{
    /// <summary>Readings that a verdict needs where a specification states none (a mean of 2 or more; common practice, no
    /// source).</summary>
    public const int DefaultMinimumReadings = 2;

    /// <summary>The product; not empty.</summary>
    /// <exception cref="ArgumentException">It is blank.</exception>
    public string Name { get; init => field = Guard.NotBlank(value, nameof(Name)); } = Guard.NotBlank(Name);

    /// <summary>The body, as it was stated; null where none is asked for.</summary>
    public Target? Body { get; init; }

    /// <summary>The method that readings must come from; null for any.</summary>
    public Method? Method { get; init; }

    /// <summary>The temperature that the body is stated at; null for the default of a run.</summary>
    public Temperature? ReferenceTemperature { get; init; }

    /// <summary>The pH; null where none is asked for.</summary>
    public AcidityBand? Acidity { get; init; }

    /// <summary>The string length; null where none is asked for.</summary>
    public StringBand? StringLength { get; init; }

    /// <summary>Readings that a verdict needs; 1 or more; null for <see cref="DefaultMinimumReadings"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is below 1.</exception>
    public int? MinimumReadings { get; init => field = value is { } count ? Guard.CountAtLeast(count, 1, nameof(MinimumReadings)) : null; }

    /// <summary>The base that the product is made from; null where it is not stated.</summary>
    public string? Base { get; init; }

    /// <summary>The thickener that its body comes from; null where it is not stated.</summary>
    public string? Thickener { get; init; }

    /// <summary>The readings that a verdict needs.</summary>
    public int MinimumReadingsInForce => MinimumReadings ?? DefaultMinimumReadings;

    /// <summary>The temperature in force.</summary>
    public Temperature ReferenceTemperatureInForce => ReferenceTemperature ?? Run.DefaultReferenceTemperature;
}
