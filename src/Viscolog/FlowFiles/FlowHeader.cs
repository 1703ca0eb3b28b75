using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.Tables;

namespace Viscolog.FlowFiles;

/// <summary>The header of one flow file.</summary>
internal sealed class FlowHeader(ValueReader values)
{
    private static readonly NumberRange Millimeters = new("mm", 0.001, 1e4);

    private static readonly Dictionary<string, NumberRange> Numbers = new(StringComparer.OrdinalIgnoreCase)
    {
        ["temp_c"] = NumberRange.Temperature,
        ["full_scale_mnm"] = new("mN·m", 1e-6, 1e9),
        ["bob_radius_mm"] = Millimeters,
        ["cup_radius_mm"] = Millimeters,
        ["bob_length_mm"] = Millimeters,
        ["end_factor"] = new("", 1, 10),
        ["cone_radius_mm"] = Millimeters,
        ["cone_angle_deg"] = new("degrees", 0.01, 10),
        ["plate_radius_mm"] = Millimeters,
        ["gap_mm"] = Millimeters,
    };

    private static readonly string[] Texts = ["name", "note", "viscolog-flow", "geometry"];

    private readonly Dictionary<string, HeaderLine> _lines = new(StringComparer.OrdinalIgnoreCase);

    private readonly Dictionary<string, double> _numbers = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Every key that is known.</summary>
    public static IEnumerable<string> Keys => Texts.Concat(Numbers.Keys);

    public string? Name => _lines.GetValueOrDefault("name")?.Value is { Length: > 0 } name ? name : null;

    private Findings Findings => values.Findings;

    public static FlowHeader Of(IEnumerable<HeaderLine> lines, ValueReader values)
    {
        var header = new FlowHeader(values);
        foreach (var line in lines)
        {
            header.Take(line);
        }

        return header;
    }

    /// <summary>The geometry and the torque at full scale; null where the file is refused.</summary>
    public (Geometry Geometry, Torque FullScale)? Series()
    {
        if (!_lines.TryGetValue("geometry", out var line))
        {
            Findings.Refuse(new(null, null, "torques without a geometry"),
                "a header line '# geometry: concentric-cylinder', 'cone-plate' or 'parallel-plates', with its sizes");
            return null;
        }

        var geometry = line.Value.ToUpperInvariant() switch
        {
            "CONCENTRIC-CYLINDER" => Cylinder(line),
            "CONE-PLATE" => Size("cone_radius_mm", line) is { } r && Number("cone_angle_deg", line) is { } angle
                ? new Geometry.ConePlate(r, angle) : null,
            "PARALLEL-PLATES" => Size("plate_radius_mm", line) is { } r && Size("gap_mm", line) is { } gap
                ? new Geometry.ParallelPlates(r, gap) : null,
            _ => Unknown(line),
        };
        return geometry is not null && Number("full_scale_mnm", line) is { } torque ? (geometry, Torque.FromNewtonMeters(torque / 1000))
            : null;
    }

    private void Take(HeaderLine line)
    {
        if (!_lines.TryAdd(line.Key, line))
        {
            Findings.Refuse(line.Place, FormattableString.Invariant($"{line.Key} once: it is already in line {_lines[line.Key].Line}"));
        }
        else if (Numbers.TryGetValue(line.Key, out var range))
        {
            if (values.Number(line.Place, line.Value, range) is { } number)
            {
                _numbers[line.Key] = number;
            }
        }
        else if (UnitWords.Meant(line.Key, Numbers.Keys) is { Count: > 0 } meant)
        {
            Findings.Refuse(line.Place, $"{string.Join(" or ", meant)}: give it in that unit");
        }
        else if (line.Key.Equals("viscolog-flow", StringComparison.OrdinalIgnoreCase) && line.Value != "1")
        {
            Findings.Refuse(line.Place, "version 1, the one that this program reads");
        }
        else if (!Texts.Contains(line.Key, StringComparer.OrdinalIgnoreCase))
        {
            Findings.Warn(line.Line, $"key '{line.Key}' is unknown; it is not used");
        }
    }

    private Geometry.ConcentricCylinder? Cylinder(HeaderLine line)
    {
        if (Size("bob_radius_mm", line) is not { } bob || Size("bob_length_mm", line) is not { } length)
        {
            return null;
        }

        var cup = _numbers.TryGetValue("cup_radius_mm", out var mm) ? Length.FromMillimeters(mm) : (Length?)null;
        if (cup <= bob)
        {
            Findings.Refuse(_lines["cup_radius_mm"].Place, "a radius above bob_radius_mm");
            return null;
        }

        return new(bob, cup, length, _numbers.GetValueOrDefault("end_factor", 1.1));
    }

    private Geometry? Unknown(HeaderLine line)
    {
        Findings.Refuse(line.Place, "concentric-cylinder, cone-plate or parallel-plates");
        return null;
    }

    private Length? Size(string key, HeaderLine line) => Number(key, line) is { } mm ? Length.FromMillimeters(mm) : null;

    private double? Number(string key, HeaderLine line)
    {
        if (_numbers.TryGetValue(key, out var value))
        {
            return value;
        }

        Findings.Refuse(line.Place, $"a header line '# {key}: …' with the geometry");
        return null;
    }
}
