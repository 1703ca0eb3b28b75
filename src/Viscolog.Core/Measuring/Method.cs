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
    private Method(string id, MethodKind kind, double repeatabilityPercent)
        => (Id, Kind, Repeatability) = (id, kind, Percentage.FromPercent(repeatabilityPercent));

    /// <summary>The method's name in files and commands.</summary>
    public string Id { get; }

    /// <summary>The kind of instrument.</summary>
    public MethodKind Kind { get; }

    /// <summary>Relative standard deviation of repeat readings (from memory, editable in a run).</summary>
    public Percentage Repeatability { get; }

    /// <summary>The scales that it is read on, the usual one first. A rotational viscometer shows a torque, or works the viscosity out itself.</summary>
    public ImmutableArray<InstrumentScale> Scales => Kind switch
    {
        MethodKind.Rotational => [InstrumentScale.Torque, InstrumentScale.Viscosity],
        MethodKind.Direct => [InstrumentScale.Viscosity],
        MethodKind.EffluxCup or MethodKind.DipCup => [InstrumentScale.CupSeconds],
        MethodKind.Krebs => [InstrumentScale.Krebs],
        _ => [InstrumentScale.Plain],
    };

    /// <summary>Whether the method reads such values.</summary>
    public bool Reads(InstrumentValue value) => Scales.Contains(value.Scale);

    /// <summary>A viscosity read off directly.</summary>
    public static Method Direct { get; } = new("direct", MethodKind.Direct, 4);

    /// <summary>Every method, the direct one first.</summary>
    public static IReadOnlyList<Method> All { get; } =
    [
        Direct,
        .. Cups("iso-2431-", MethodKind.EffluxCup, "3", "4", "5", "6"),
        .. Cups("d1200-", MethodKind.EffluxCup, "1", "2", "3", "4", "5"),
        .. Cups("d4212-44ml-", MethodKind.DipCup, "1", "2", "3", "4", "5"),
        .. Cups("d4212-23ml-", MethodKind.DipCup, "1", "2", "2.5", "3", "3.5", "4", "5", "6"),
        new("krebs", MethodKind.Krebs, 3),
        new("rotational", MethodKind.Rotational, 3),
        new("falling-ball", MethodKind.FallingBall, 8),
        new("slump", MethodKind.Slump, 15),
    ];

    private static FrozenDictionary<string, Method> ById { get; } = All.ToFrozenDictionary(m => m.Id, StringComparer.Ordinal);

    /// <summary>Finds a method by its <see cref="Id"/>; null where there is none.</summary>
    public static Method? Find(string id) => ById.GetValueOrDefault(id);

    private static IEnumerable<Method> Cups(string series, MethodKind kind, params string[] numbers)
        => numbers.Select(n => new Method(series + n, kind, 4));
}

/// <summary>What kind of instrument a method uses; readings of different kinds meet different shear and are never fitted together.</summary>
public enum MethodKind
{
    /// <summary>A viscosity read off directly.</summary>
    Direct,

    /// <summary>An efflux cup: seconds to run out.</summary>
    EffluxCup,

    /// <summary>A dip cup: seconds to run out.</summary>
    DipCup,

    /// <summary>A Krebs paddle: Krebs units.</summary>
    Krebs,

    /// <summary>A rotational viscometer: torque at a speed.</summary>
    Rotational,

    /// <summary>A ball falling in a vessel.</summary>
    FallingBall,

    /// <summary>A slumping cylinder.</summary>
    Slump,
}
