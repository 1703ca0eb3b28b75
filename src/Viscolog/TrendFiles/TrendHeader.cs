using Viscolog.Tables;

namespace Viscolog.TrendFiles;

/// <summary>The header of one trend file.</summary>
internal sealed class TrendHeader
{
    private static readonly string[] Texts = ["viscolog-trend", "name", "unit", "note"];

    private static readonly string[] Numbers = ["low", "high"];

    private readonly Dictionary<string, string> _texts = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, double> _numbers = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Every key that is known.</summary>
    public static IEnumerable<string> Keys => Texts.Concat(Numbers);

    public string? Name => _texts.GetValueOrDefault("name") is { Length: > 0 } name ? name : null;

    public string? Unit => _texts.GetValueOrDefault("unit");

    public double? Low => _numbers.TryGetValue("low", out var low) ? low : null;

    public double? High => _numbers.TryGetValue("high", out var high) ? high : null;

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
        if (!_texts.TryAdd(line.Key, line.Value))
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
                _numbers[line.Key] = number;
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
