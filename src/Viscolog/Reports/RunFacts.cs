using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Reports;

/// <summary>What documents say of a run's header.</summary>
internal static class RunFacts
{
    /// <summary>The run's name, or what stands for one.</summary>
    public static string Name(Run run) => run.Name ?? "run without a name";

    /// <summary>The method in words.</summary>
    public static string Method(Run run) => run.MethodInForce.Words;

    /// <summary>The temperature that bodies are stated at.</summary>
    public static string Temperature(Run run)
        => run.ReferenceTemperatureInForce.Celsius.ToString("0.#", CultureInfo.InvariantCulture) + " °C";

    /// <summary>The repeatability and where it comes from.</summary>
    public static string Repeatability(Run stated, Run inForce)
    {
        var value = Percent(inForce.RepeatabilityInForce);
        return stated.Repeatability is not null ? $"{value}, as given in the run"
            : inForce.Repeatability is not null ? $"{value}, from repeat readings"
            : $"{value}, the method's default";
    }

    /// <summary>A percentage to a tenth.</summary>
    public static string Percent(Percentage part) => part.Percent.ToString("0.#", CultureInfo.InvariantCulture) + " %";

    /// <summary>A thickener with what is known of it.</summary>
    public static string Thickener(Thickener thickener)
    {
        string?[] parts =
        [
            thickener.Chemistry == ThickenerChemistry.Other ? null : RunFiles.FileNames.Chemistries.Of(thickener.Chemistry),
            thickener.Active is { } active ? active.Percent.ToString("0.##", CultureInfo.InvariantCulture) + " % active" : null,
            thickener.Dilution == PreDilution.None ? null : "diluted with water " + Dilution(thickener.Dilution),
        ];
        var known = string.Join(", ", parts.OfType<string>());
        return known.Length == 0 ? thickener.Name : $"{thickener.Name} ({known})";
    }

    /// <summary>Parts of thickener to parts of water.</summary>
    public static string Dilution(PreDilution dilution)
        => string.Create(CultureInfo.InvariantCulture, $"{dilution.ThickenerParts:0.##}:{dilution.WaterParts:0.##}");

    /// <summary>The days from the first entry to the last; null where no entry has a time.</summary>
    public static string? Days(Run run)
    {
        var times = run.Entries.Select(e => e.Time).OfType<DateTimeOffset>().Order();
        string[] days = [.. times.Select(t => Shown.Day(DateOnly.FromDateTime(t.Date)))];
        return days.Length == 0 ? null : days[0] == days[^1] ? days[0] : $"{days[0]} to {days[^1]}";
    }
}

/// <summary>What stands small at the end of a document.</summary>
internal static class Foot
{
    public static string Of(Run run, Guid? id = null)
        => $"Made by Viscolog {Version} from {RunFacts.Name(run)}{(id is { } known ? $", run {known:D}" : "")}. Advice is not a release: "
            + $"who signs decides.";

    private static string Version { get; } = typeof(Foot).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
}

/// <summary>Cautions as a document states them.</summary>
internal static class Safety
{
    /// <summary>What holds wherever colour goes in.</summary>
    private const string Metal = "Metal pigments are poisonous or catch fire as dust, and some give off gas with alkali: use them as "
        + "pastes, never dry, never in a closed vessel.";

    /// <summary>The cautions of a thickener with what belongs to colour, the deciding word last.</summary>
    public static string Of(ImmutableArray<string> cautions)
        => string.Join(' ', cautions.Length == 0 ? [Metal] : [.. cautions[..^1], Metal, cautions[^1]]);
}
