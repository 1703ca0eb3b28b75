using Viscolog.Tables;

namespace Viscolog.TrendFiles;

/// <summary>The header of one trend file.</summary>
internal sealed class TrendHeader
{
    private static readonly string[] Texts = ["viscolog-trend", "name", "unit", "note"];

    private static readonly string[] Numbers = ["low", "high"];

    private readonly Dictionary<string, string> texts = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, double> numbers = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Every key that is known.</summary>
    public static IEnumerable<string> Keys => Texts.Concat(Numbers);

    public string? Name => texts.GetValueOrDefault("name") is { Length: > 0 } name ? name : null;

    public string? Unit => texts.GetValueOrDefault("unit");

    public double? Low => numbers.TryGetValue("low", out var low) ? low : null;

    public double? High => numbers.TryGetValue("high", out var high) ? high : null;

    public static TrendHeader Of(IEnumerable<HeaderLine> lines, ValueReader values)
    {
        var header = new TrendHeader();
        foreach (var line in lines)
        {
            header.Take(line, values);
        }

        return header;
    }

    private void Take(HeaderLine line, ValueReader values)
    {
        if (!texts.TryAdd(line.Key, line.Value))
        {
            values.Findings.Refuse(line.Place, $"{line.Key} once");
        }
        else if (line.Key.Equals("viscolog-trend", StringComparison.OrdinalIgnoreCase) && line.Value != "1")
        {
            values.Findings.Refuse(line.Place, "version 1, the one that this program reads");
        }
        else if (Numbers.Contains(line.Key, StringComparer.OrdinalIgnoreCase))
        {
            if (values.Number(line.Place, line.Value, NumberRange.Any) is { } number)
            {
                numbers[line.Key] = number;
            }

            if (Low >= High)
            {
                values.Findings.Refuse(line.Place, "low below high");
            }
        }
        else if (!Texts.Contains(line.Key, StringComparer.OrdinalIgnoreCase))
        {
            values.Findings.Warn(line.Line, $"key '{line.Key}' is unknown; it is not used");
        }
    }
}
