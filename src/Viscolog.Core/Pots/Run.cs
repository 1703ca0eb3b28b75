using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>
/// One pot from its first reading to its last: base, thickeners, target, and the entries in the order in which they happened.
/// </summary>
/// <param name="Base">The base.</param>
/// <param name="BaseMass">Base at the start; above 0.</param>
public sealed record Run(PotBase Base, Mass BaseMass)
{
    /// <summary>
    /// The reference temperature where a run states none (the standard atmosphere for paints in ISO 3270, 23 °C; from memory).
    /// </summary>
    public static readonly Temperature DefaultReferenceTemperature = Temperature.FromCelsius(23);

    /// <summary>The scale's step where a run states none.</summary>
    public static readonly Mass DefaultScaleStep = Mass.FromGrams(0.01);

    /// <summary>The run's name.</summary>
    public string? Name { get; init; }

    /// <summary>The base's lot.</summary>
    public string? Lot { get; init; }

    /// <summary>The product that it is a batch of, by its specification's name.</summary>
    public string? Product { get; init; }

    /// <summary>Who ran it.</summary>
    public string? Operator { get; init; }

    /// <summary>A note on the whole run.</summary>
    public string? Note { get; init; }

    /// <summary>The thickeners in use, each name once.</summary>
    public ImmutableArray<Thickener> Thickeners { get; init; } = [];

    /// <summary>The body aimed at.</summary>
    public Target? Target { get; init; }

    /// <summary>The string length aimed at.</summary>
    public StringBand? TargetString { get; init; }

    /// <summary>The temperature that bodies are stated at; null for the default.</summary>
    public Temperature? ReferenceTemperature { get; init; }

    /// <summary>The method of the readings; null for the direct one.</summary>
    public Method? Method { get; init; }

    /// <summary>What the method needs to know besides its readings.</summary>
    public MethodSetup Setup { get; init; } = MethodSetup.None;

    /// <summary>Relative standard deviation of repeat readings; null for the method's default.</summary>
    public Percentage? Repeatability { get; init; }

    /// <summary>The scale's step; null for the default.</summary>
    public Mass? ScaleStep { get; init; }

    /// <summary>The viscosity beyond which the pot can't be stirred.</summary>
    public Viscosity? TooStiff { get; init; }

    /// <summary>The entries, in order.</summary>
    public ImmutableArray<Entry> Entries { get; init; } = [];

    /// <summary>The method in force.</summary>
    public Method MethodInForce => Method ?? Method.Direct;

    /// <summary>The repeatability in force.</summary>
    public Percentage RepeatabilityInForce => Repeatability ?? MethodInForce.Repeatability;

    /// <summary>The reference temperature in force.</summary>
    public Temperature ReferenceTemperatureInForce => ReferenceTemperature ?? DefaultReferenceTemperature;

    /// <summary>The scale step in force.</summary>
    public Mass ScaleStepInForce => ScaleStep ?? DefaultScaleStep;

    /// <summary>The thickener that has that name, or had it; null where the run has none.</summary>
    public Thickener? FindThickener(string name)
        => Thickeners.FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.Ordinal))
            ?? Thickeners.FirstOrDefault(t => t.Formerly.Contains(name, StringComparer.Ordinal));

    /// <summary>The name that a thickener has now; the same where the run knows none of it.</summary>
    public string NameNow(string thickener) => FindThickener(thickener)?.Name ?? thickener;

    /// <summary>
    /// Appends an entry to the run as it stands: the run that goes on, or why it can't (see <see cref="OpenRun"/> to append many).
    /// </summary>
    /// <param name="entry">What happened next.</param>
    /// <exception cref="ArgumentException">An earlier entry does not fit the run (see <see cref="After"/>).</exception>
    public Appended Append(Entry entry) => OpenRun.After(this).Append(entry);

    /// <summary>The pot after every entry that counts.</summary>
    /// <exception cref="ArgumentException">An entry names a thickener that the run lacks, or takes out more than the pot holds.</exception>
    public Pot PotNow() => Entries.Aggregate(Pot.With(BaseMass), After);

    /// <summary>The pot after one more entry; an entry that is void changes nothing.</summary>
    /// <exception cref="ArgumentException">
    /// The entry names a thickener that the run lacks, or takes out more than the pot holds.
    /// </exception>
    public Pot After(Pot pot, Entry entry) => !entry.Counts ? pot : entry switch
    {
        Entry.Dosed dosed => pot.Add(Named(dosed.Thickener), dosed.Poured),
        Entry.TakenOut taken => pot.TakeOut(taken.Sample),
        Entry.LetDown letDown => pot.LetDown(letDown.Base),
        Entry.Watered watered => pot.AddWater(watered.Water),
        _ => pot,
    };

    private Thickener Named(string name)
        => FindThickener(name) ?? throw new ArgumentException($"the run has no thickener named '{name}'", nameof(name));
}
