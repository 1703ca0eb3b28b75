using System.Collections.Immutable;
using System.Reflection;
using Viscolog.Core.Limits;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>What documents say of a run's header.</summary>
internal static class RunFacts
{
    /// <summary>The run's name, or what stands for one.</summary>
    public static string Name(Run run) => run.Name ?? Say("run without a name");

    /// <summary>The method in words.</summary>
    public static string Method(Run run) => run.MethodInForce switch
    {
        var cup when Cups.Find(cup) is { } known => known.Series is CupSeries.Iso2431 or CupSeries.D1200
            ? Say($"efflux cup {known.Id}")
            : Say($"dip cup {known.Id}"),
        var other => Named(other.Words),
    };

    /// <summary>The method in words, with the speed that it was read at.</summary>
    public static string Method(Run run, ShearCondition? condition)
        => condition?.RevolutionsPerMinute is { } rpm ? Say($"{Method(run)} at {rpm:0.###} 1/min") : Method(run);

    /// <summary>The temperature that bodies are stated at.</summary>
    public static string Temperature(Run run)
        => run.ReferenceTemperatureInForce.Celsius.ToString("0.#", Numbers) + " °C";

    /// <summary>The repeatability and where it comes from.</summary>
    public static string Repeatability(Run stated, Run inForce)
    {
        var value = Percent(inForce.RepeatabilityInForce);
        return stated.Repeatability is not null ? Say($"{value}, as given in the run")
            : inForce.Repeatability is not null ? Say($"{value}, from repeat readings")
            : Say($"{value}, the method's default");
    }

    /// <summary>A percentage to a tenth.</summary>
    public static string Percent(Percentage part) => part.Percent.ToString("0.#", Numbers) + " %";

    /// <summary>A thickener with what is known of it.</summary>
    public static string Thickener(Thickener thickener)
    {
        string?[] parts =
        [
            Chemistry(thickener.Chemistry),
            thickener.Active is { } active ? Say($"{active.Percent:0.##} % active") : null,
            thickener.Dilution == PreDilution.None ? null : Say($"diluted with water {Dilution(thickener.Dilution)}"),
        ];
        var known = string.Join(", ", parts.OfType<string>());
        return known.Length == 0 ? thickener.Name : $"{thickener.Name} ({known})";
    }

    private static string? Chemistry(ThickenerChemistry chemistry) => chemistry switch
    {
        ThickenerChemistry.AlkaliSwellable => Say("alkali-swellable"),
        ThickenerChemistry.Associative => Say("associative"),
        ThickenerChemistry.Cellulosic => Say("cellulosic"),
        ThickenerChemistry.Clay => Say("clay"),
        ThickenerChemistry.Other => null,
        _ => throw new ArgumentOutOfRangeException(nameof(chemistry), chemistry, "not a case of the closed set"),
    };

    /// <summary>Parts of thickener to parts of water.</summary>
    public static string Dilution(PreDilution dilution)
        => string.Create(Numbers, $"{dilution.ThickenerParts:0.##}:{dilution.WaterParts:0.##}");

    /// <summary>The days from the first entry to the last; null where no entry has a time.</summary>
    public static string? Days(Run run)
    {
        var times = run.Entries.Select(e => e.Time).OfType<DateTimeOffset>().Order();
        string[] days = [.. times.Select(t => Shown.Day(DateOnly.FromDateTime(t.Date)))];
        return days.Length == 0 ? null : days[0] == days[^1] ? days[0] : Say($"{days[0]} to {days[^1]}");
    }
}

/// <summary>What stands small at the end of a document.</summary>
internal static class Foot
{
    public static string Of(Run run, Guid? id = null)
        => id is { } known
            ? Say($"Made by Viscolog {Version} from {RunFacts.Name(run)}, run {known:D}. Advice is not a release: who signs decides.")
            : Say($"Made by Viscolog {Version} from {RunFacts.Name(run)}. Advice is not a release: who signs decides.");

    private static string Version { get; } = typeof(Foot).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
}

/// <summary>Cautions as a document states them.</summary>
internal static class Safety
{
    /// <summary>What holds wherever colour goes in.</summary>
    private static string Metal => Say("Metal pigments are poisonous or catch fire as dust, and some give off gas with alkali: use them as "
        + "pastes, never dry, never in a closed vessel.");

    /// <summary>The cautions of a thickener with what belongs to colour, the deciding word last.</summary>
    public static string Of(ImmutableArray<Caution> cautions) => string.Join(
        ' ', cautions.Length == 0 ? [Metal] : [.. cautions[..^1].Select(CautionWords.Of), Metal, CautionWords.Of(cautions[^1])]);
}
