using System.Collections.Frozen;
using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>The header line of a thickener: its name, then traits as <c>key=value</c> after semicolons.</summary>
internal static class ThickenerLine
{
    /// <summary>The one trait that may be stated more than once.</summary>
    private const string Formerly = "formerly";

    /// <summary>The traits that the format knows.</summary>
    public static readonly ImmutableArray<ThickenerTrait> Traits =
    [
        new("chemistry", TakeChemistry, t => t.Chemistry == ThickenerChemistry.Other ? null : FileNames.Chemistries.Of(t.Chemistry)),
        new(
            "range_pct",
            TakeRange,
            t => !t.IsRangeStated ? null : $"{FileNumbers.Show(t.UsualRange.Low.Percent)}-{FileNumbers.Show(t.UsualRange.Top.Percent)}"),
        new(
            "active_pct",
            Number(NumberRange.Percent, (t, v) => t with { Active = Percentage.FromPercent(v) }),
            t => Shown(t.Active?.Percent)),
        new(
            "density_g_ml",
            Number(NumberRange.Density, (t, v) => t with { Density = Density.FromGramsPerMilliliter(v) }),
            t => Shown(t.Density?.GramsPerMilliliter)),
        new(
            "price_per_kg",
            (t, v, at, text) => v.Price(at, text) is { } price ? t with { PricePerKilogram = price } : t,
            t => t.PricePerKilogram is { } p ? FileNumbers.Show(p) : null),
        new(
            "dilution",
            TakeDilution,
            t => t.Dilution == PreDilution.None
                ? null
                : $"{FileNumbers.Show(t.Dilution.ThickenerParts)}:{FileNumbers.Show(t.Dilution.WaterParts)}"),
        new(
            Formerly,
            TakeFormerly,
            t => t.Formerly.IsEmpty ? null : string.Join($"; {Formerly}=", t.Formerly))
        { IsOfRun = true },
    ];

    private static readonly FrozenDictionary<string, ThickenerTrait> ByName = Traits.ToFrozenDictionary(
        t => t.Name,
        StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether a thickener of that name can stand in a run file.</summary>
    public static bool CanName(string name)
        => name.Length > 0 && name.Trim().Length == name.Length && !name.AsSpan().ContainsAny(";=\r\n\0");

    /// <summary>Takes the line into the header.</summary>
    public static void Take(RunHeader header, HeaderLine line)
    {
        var parts = line.Value.Split(';', StringSplitOptions.TrimEntries);
        var findings = header.Values.Findings;
        if (!CanName(parts[0]))
        {
            findings.Refuse(line.Place, "a name first, such as '# thickener: TA; range_pct=1-5'");
        }
        else if (header.Run.FindThickener(parts[0]) is not null)
        {
            findings.Refuse(line.Place, $"each thickener once: {OneLine.Quoted(parts[0])} is already in the header");
        }
        else
        {
            var thickener = new Thickener(parts[0]);
            var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
            foreach (var part in parts.Skip(1).Where(p => p.Length > 0))
            {
                thickener = TakeTrait(header, line.Line, thickener, part, seen);
            }

            header.Run = header.Run with { Thickeners = header.Run.Thickeners.Add(thickener) };
        }
    }

    /// <summary>The line's value for a thickener and what the format does not know of it.</summary>
    public static string Show(Thickener thickener, IEnumerable<UnknownTrait> unknown)
    {
        var known = Traits.Select(t => (t.Name, Text: t.Show(thickener))).Where(t => t.Text is not null).Select(t => $"{t.Name}={t.Text}");
        var kept = unknown.Where(u => u.Thickener == thickener.Name).Select(u => $"{u.Key}={u.Value}");
        return string.Join("; ", [thickener.Name, .. known, .. kept]);
    }

    private static Thickener TakeTrait(RunHeader header, int line, Thickener thickener, string part, HashSet<string> seen)
    {
        var at = new Place(line, null, OneLine.Quoted(part));
        var findings = header.Values.Findings;
        var mark = part.IndexOf('=', StringComparison.Ordinal);
        var key = mark < 0 ? "" : part[..mark].Trim();
        if (key.Length == 0)
        {
            findings.Refuse(at, $"key=value, the key one of {string.Join(", ", Traits.Select(t => t.Name))}");
        }
        else if (!seen.Add(key) && !string.Equals(key, Formerly, StringComparison.OrdinalIgnoreCase))
        {
            findings.Refuse(at, $"{key} once for a thickener");
        }
        else if (ByName.TryGetValue(key, out var trait))
        {
            if (trait.IsOfRun && header.Run.FindThickener(part[(mark + 1)..].Trim()) is not null)
            {
                findings.Refuse(at, "a name that no other thickener of the header has or had");
            }

            return trait.Take(thickener, header.Values.InText(part), at, part[(mark + 1)..].Trim());
        }
        else if (UnitWords.Meant(key, ByName.Keys) is { Count: > 0 } meant)
        {
            findings.Refuse(at, $"{string.Join(" or ", meant)}: give it in that unit");
        }
        else
        {
            header.UnknownTraits.Add(new(thickener.Name, key, part[(mark + 1)..].Trim()));
            findings.Warn(line, $"'{key}' of thickener {thickener.Name} is unknown; it is kept, not used");
        }

        return thickener;
    }

    private static Thickener TakeChemistry(Thickener thickener, ValueReader values, Place at, string text)
    {
        if (FileNames.Chemistries.Find(text) is { } chemistry)
        {
            return thickener with { Chemistry = chemistry };
        }

        values.Findings.Refuse(at, $"a chemistry: {FileNames.Chemistries.List}");
        return thickener;
    }

    private static Thickener TakeFormerly(Thickener thickener, ValueReader values, Place at, string text)
    {
        if (CanName(text) && text != thickener.Name && !thickener.Formerly.Contains(text, StringComparer.Ordinal))
        {
            return thickener with { Formerly = thickener.Formerly.Add(text) };
        }

        values.Findings.Refuse(at, "another name that it had before, each once");
        return thickener;
    }

    private static Thickener TakeRange(Thickener thickener, ValueReader values, Place at, string text)
        => values.Rising(at, text, NumberRange.Dose) is var (low, top)
            ? thickener with { UsualRange = new(Dose.FromPercent(low), Dose.FromPercent(top)) }
            : thickener;

    private static Thickener TakeDilution(Thickener thickener, ValueReader values, Place at, string text)
        => values.Parts(at, text) is var (part, water) ? thickener with { Dilution = new(part, water) } : thickener;

    private static Func<Thickener, ValueReader, Place, string, Thickener> Number(NumberRange range, Func<Thickener, double, Thickener> take)
        => (thickener, values, at, text) => values.Number(at, text, range) is { } value ? take(thickener, value) : thickener;

    private static string? Shown(double? value) => value is { } v ? FileNumbers.Show(v) : null;
}

/// <summary>A trait of a thickener that the format knows.</summary>
/// <param name="Name">Its name in a header line.</param>
/// <param name="Take">Takes its text into the thickener.</param>
/// <param name="Show">Its text; null where the thickener has the default.</param>
internal sealed record ThickenerTrait(
    string Name,
    Func<Thickener, ValueReader, Place, string, Thickener> Take,
    Func<Thickener, string?> Show)
{
    /// <summary>Whether it says something of the thickener in this run alone.</summary>
    public bool IsOfRun { get; init; }
}
