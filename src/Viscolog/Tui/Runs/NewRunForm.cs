using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.MaterialFiles;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Runs;

/// <summary>The form that begins a run.</summary>
internal static class NewRunForm
{
    /// <summary>The form, with what the last run used already in it.</summary>
    /// <param name="materials">The log's materials, those that are not retired.</param>
    /// <param name="last">The run begun last; null for none.</param>
    public static Form<RunFile> Of(IReadOnlyList<MaterialRow> materials, LoggedRun? last)
    {
        var kept = materials.Select(m => m.Material).Where(m => !m.IsRetired).ToList();
        var before = last?.File.Run;
        var bases = kept.OfType<Material.OfBase>().ToList();
        var thickeners = kept.OfType<Material.OfThickener>().ToList();
        var methods = kept.OfType<Material.OfMethod>().ToList();
        return new(
            "New run",
            "Only base, grams and thickener must be there.",
            [
                new("name", ""),
                new("base", before?.Base.Name ?? bases.FirstOrDefault()?.Name ?? "", Choices(bases)),
                new("base in the pot", before is null ? "" : FileNumbers.Show(before.BaseMass.Grams), "g"),
                new("thickener", before?.Thickeners.FirstOrDefault()?.Name ?? thickeners.FirstOrDefault()?.Name ?? "", Choices(thickeners)),
                new(
                    "usual range",
                    before?.Thickeners.FirstOrDefault() is { } t
                        ? Range(t)
                        : thickeners.FirstOrDefault() is { } k
                        ? Range(k.Thickener)
                        : "1-5",
                    "% of base"),
                new(
                    "target",
                    before?.Target is { } target ? FileNumbers.Show(Math.Round(target.Band.Aim.MilliPascalSeconds, 3)) : "",
                    "mPa·s"),
                new(
                    "tolerance",
                    before?.Target is Target.Value { Tolerance: { } tolerance } ? FileNumbers.Show(tolerance.Percent) : "15",
                    "% either side"),
                new(
                    "method",
                    before is null ? methods.FirstOrDefault()?.Name ?? Method.Direct.Id : MethodText(before),
                    methods.Count > 0 ? Choices(methods) : "direct, krebs, iso-2431-4, rotational; factor_mpas_per_pct=100"),
                new("operator", before?.Operator ?? ""),
            ],
            texts => Read(texts, kept, before));
    }

    private static string Range(Thickener thickener)
        => $"{FileNumbers.Show(thickener.UsualRange.Low.Percent)}-{FileNumbers.Show(thickener.UsualRange.Top.Percent)}";

    /// <summary>The method of a run as it is typed: its name, then what it needs to know, as a run file's header has it.</summary>
    private static string MethodText(Run run)
    {
        var file = RunFile.FromRun(run);
        var traits = HeaderKeys.All.Where(k => k.IsOfMethod).SelectMany(k => k.Show(file).Select(v => $"{k.Name}={v}"));
        return string.Join("; ", traits.Prepend(run.MethodInForce.Id));
    }

    /// <summary>The header lines that such a text stands for.</summary>
    private static IEnumerable<string> MethodLines(string text, List<Material> kept)
    {
        var parts = text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        foreach (var (i, part) in parts.Index())
        {
            if (i > 0)
            {
                var (key, value) = part.Split('=', 2, StringSplitOptions.TrimEntries) is [var k, var v] ? (k, v) : (part, "");
                yield return $"{key}: {value}";
            }
            else if (kept.OfType<Material.OfMethod>().FirstOrDefault(m => m.Name == part)?.Method is { } own)
            {
                yield return $"method: {own.Method.Id}";
                yield return FormattableString.Invariant($"repeatability_pct: {FileNumbers.Show(own.RepeatabilityInForce.Percent)}");
            }
            else
            {
                yield return $"method: {part}";
            }
        }
    }

    private static string Choices(IEnumerable<Material> materials) => string.Join(", ", materials.Select(m => m.Name).Take(4));

    private static FormAnswer<RunFile> Read(IReadOnlyList<string> texts, List<Material> kept, Run? before)
    {
        var name = texts[3].Trim();
        if (!ThickenerLine.CanName(name))
        {
            return FormAnswer<RunFile>.Wrong(3, name.Length == 0 ? "a thickener's name" : "a name without ';' and '='");
        }

        if (texts[1].Trim().Length == 0)
        {
            return FormAnswer<RunFile>.Wrong(1, "the base's name; runs of one base learn from each other");
        }

        // The header's own reader knows what each of these may be, and says what is wrong in the same words.
        string[] lines =
        [
            $"base_g: {texts[2].Trim().Replace(',', '.')}",
            $"thickener: {name}; range_pct={texts[4].Trim().Replace(',', '.')}",
        ];
        string[] aims = texts[5].Trim().Length == 0
            ? []
            : [$"target_mpas: {texts[5].Trim().Replace(',', '.')}", $"tolerance_pct: {texts[6].Trim().Replace(',', '.')}"];
        string[] method = [.. MethodLines(texts[7], kept)];
        string[] keys = [.. HeaderKeys.All.Where(k => k.IsOfMethod).Select(k => k.Name)];
        if (method.Skip(1).FirstOrDefault(l => !keys.Any(k => l.StartsWith(k + ":", StringComparison.Ordinal))) is { } unknown)
        {
            var names = string.Join(", ", keys);
            return FormAnswer<RunFile>.Wrong(7, $"after the method's name, 'key=value' with one of {names}; read '{unknown}'");
        }

        var (file, refusal) = HeaderText.TryRead([.. lines, .. method, .. aims]);
        if (file is null)
        {
            var field = refusal!.Contains("base_g", StringComparison.Ordinal)
                ? 2
                : refusal.Contains("range_pct", StringComparison.Ordinal)
                ? 4
                : refusal.Contains("target", StringComparison.Ordinal)
                ? 5
                : refusal.Contains("tolerance", StringComparison.Ordinal)
                ? 6
                : 7;
            return FormAnswer<RunFile>.Wrong(field, refusal);
        }

        var thickener = file.Run.Thickeners[0];
        var known = kept.OfType<Material.OfThickener>().FirstOrDefault(t => t.Name == name)?.Thickener ?? before?.FindThickener(name);
        var run = file.Run with
        {
            Name = texts[0].Trim() is { Length: > 0 } title ? title : null,
            Base = kept.OfType<Material.OfBase>().FirstOrDefault(b => b.Name == texts[1].Trim())?.Base ?? new PotBase(texts[1].Trim()),
            Operator = texts[8].Trim() is { Length: > 0 } who ? who : null,
            Thickeners = [thickener.IsRangeStated ? (known ?? thickener) with { UsualRange = thickener.UsualRange } : known ?? thickener],
        };
        return FormAnswer<RunFile>.Of(file with { Run = run });
    }
}
