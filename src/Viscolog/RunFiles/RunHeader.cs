using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>The header of one file while its lines are taken in.</summary>
internal sealed class RunHeader(ValueReader values)
{
    private readonly Dictionary<string, HeaderLine> _seen = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Reads the values of this file.</summary>
    public ValueReader Values => values;

    /// <summary>The run so far, without entries.</summary>
    public Run Run { get; set; } = new(new(null), Mass.None);

    /// <summary>The run's identity.</summary>
    public Guid? Id { get; set; }

    /// <summary>A single target value in mPa·s.</summary>
    public double? Wanted { get; set; }

    /// <summary>The low end of the target in mPa·s.</summary>
    public double? Low { get; set; }

    /// <summary>The high end of the target in mPa·s.</summary>
    public double? High { get; set; }

    /// <summary>The tolerance.</summary>
    public Percentage? Tolerance { get; set; }

    /// <summary>Keys that the format does not know.</summary>
    public ImmutableArray<UnknownKey>.Builder UnknownKeys { get; } = ImmutableArray.CreateBuilder<UnknownKey>();

    /// <summary>Traits that the format does not know.</summary>
    public ImmutableArray<UnknownTrait>.Builder UnknownTraits { get; } = ImmutableArray.CreateBuilder<UnknownTrait>();

    private Findings Findings => values.Findings;

    /// <summary>Takes the header lines in; what is wrong with them goes to the findings.</summary>
    public static RunHeader Of(IEnumerable<HeaderLine> lines, ValueReader values)
    {
        var header = new RunHeader(values);
        foreach (var line in lines)
        {
            header.Take(line);
        }

        header.CheckBase();
        header.CheckTarget();
        return header;
    }

    /// <summary>The header as a file without rows.</summary>
    public RunFile ToFile() => new(Run)
    {
        Id = Id,
        UnknownKeys = UnknownKeys.ToImmutable(),
        UnknownTraits = UnknownTraits.ToImmutable(),
        UnusedTolerance = Wanted is null ? Tolerance : null,
    };

    private void Take(HeaderLine line)
    {
        if (HeaderKeys.ByName.TryGetValue(line.Key, out var key))
        {
            if (!_seen.TryAdd(key.Name, line) && !key.Repeats)
            {
                Findings.Refuse(line.Place, FormattableString.Invariant($"{key.Name} once: it is already in line {_seen[key.Name].Line}"));
            }

            key.Take(this, line);
        }
        else if (UnitWords.Meant(line.Key, HeaderKeys.ByName.Keys) is { Count: > 0 } meant)
        {
            Findings.Refuse(line.Place, $"{string.Join(" or ", meant)}: give it in that unit");
        }
        else
        {
            UnknownKeys.Add(new(line.Key, line.Value));
            Findings.Warn(line.Line, $"key '{line.Key}' is unknown; it is kept, not used");
        }
    }

    private void CheckBase()
    {
        if (!_seen.ContainsKey("base_g"))
        {
            Findings.Refuse(new(null, null, "no base_g"), "a header line '# base_g: 120' with the grams of base at the start");
        }
    }

    private void CheckTarget()
    {
        var end = _seen.GetValueOrDefault("target_low_mpas") ?? _seen.GetValueOrDefault("target_high_mpas");
        if (_seen.TryGetValue("target_mpas", out var wanted) && end is not null)
        {
            var later = wanted.Line > end.Line ? wanted : end;
            Findings.Refuse(later.Place, "one target: target_mpas, or target_low_mpas with target_high_mpas");
        }
        else if (end is not null)
        {
            CheckEnds(end);
        }
        else if (Wanted is { } value)
        {
            Run = Run with { Target = new Target.Value(Viscosity.FromMilliPascalSeconds(value), Tolerance) };
        }

        if (Wanted is null && _seen.TryGetValue("tolerance_pct", out var tolerance))
        {
            Findings.Warn(tolerance.Line, "tolerance_pct has no target_mpas to go with; it is kept, not used");
        }
    }

    private void CheckEnds(HeaderLine end)
    {
        var (low, high) = (_seen.GetValueOrDefault("target_low_mpas"), _seen.GetValueOrDefault("target_high_mpas"));
        if (low is null || high is null)
        {
            Findings.Refuse(end.Place, $"{(low is null ? "target_low_mpas" : "target_high_mpas")} as well: a band has two ends");
        }
        else if (Low >= High)
        {
            Findings.Refuse(high.Place, "a high end above the low end");
        }
        else if (Low is { } l && High is { } h)
        {
            Run = Run with { Target = new Target.Ends(Viscosity.FromMilliPascalSeconds(l), Viscosity.FromMilliPascalSeconds(h)) };
        }
    }
}
