using System.Collections.Frozen;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Tables;
using static Viscolog.RunFiles.HeaderKey;

namespace Viscolog.RunFiles;

/// <summary>The header keys that the format knows.</summary>
internal static class HeaderKeys
{
    /// <summary>The version of the format that is read and written.</summary>
    public const string Version = "1";

    /// <summary>Every key, in the order in which they are written.</summary>
    public static IReadOnlyList<HeaderKey> All { get; } =
    [
        Once("viscolog-run", TakeVersion, _ => Version),
        Once("run_id", TakeId, f => f.Id?.ToString()),
        Text("name", (h, text) => h.Run = h.Run with { Name = text }, r => r.Name),
        Text("base", (h, text) => h.Run = h.Run with { Base = h.Run.Base with { Name = text } }, r => r.Base.Name),
        Text("lot", (h, text) => h.Run = h.Run with { Lot = text }, r => r.Lot),
        Text("product", (h, text) => h.Run = h.Run with { Product = text }, r => r.Product),
        Text("operator", (h, text) => h.Run = h.Run with { Operator = text }, r => r.Operator),
        Text("note", (h, text) => h.Run = h.Run with { Note = text }, r => r.Note),
        Number("base_g", NumberRange.GramsPresent, (r, v) => r with { BaseMass = Mass.FromGrams(v) }, r => r.BaseMass.Grams),
        Number("base_density_g_ml", NumberRange.Density, WithDensity, r => r.Base.Density?.GramsPerMilliliter),
        new("thickener", ThickenerLine.Take, f => f.Run.Thickeners.Select(t => ThickenerLine.Show(t, f.UnknownTraits))) { Repeats = true },
        Once("target_mpas", Number(NumberRange.Viscosity, (h, v) => h.Wanted = v), f => Shown((f.Run.Target as Target.Value)?.Wanted)),
        Once("target_low_mpas", Number(NumberRange.Viscosity, (h, v) => h.Low = v), f => Shown((f.Run.Target as Target.Ends)?.Low)),
        Once("target_high_mpas", Number(NumberRange.Viscosity, (h, v) => h.High = v), f => Shown((f.Run.Target as Target.Ends)?.High)),
        Once("tolerance_pct", Number(new("%", 0.001, 99), (h, v) => h.Tolerance = Percentage.FromPercent(v)), Tolerance),
        Once(
            "target_string_mm",
            TakeString,
            f => f.Run.TargetString is { } s ? $"{FileNumbers.Show(s.Low.Millimeters)}-{FileNumbers.Show(s.High.Millimeters)}" : null),
        Number(
            "reference_temp_c",
            NumberRange.Temperature,
            (r, v) => r with { ReferenceTemperature = Temperature.FromCelsius(v) },
            r => r.ReferenceTemperature?.Celsius),
        Once("method", TakeMethod, f => f.Run.Method?.Id),
        Setup(
            "factor_mpas_per_pct",
            NumberRange.Viscosity,
            (s, v) => s with { PerPercentTorque = Viscosity.FromMilliPascalSeconds(v) },
            s => s.PerPercentTorque?.MilliPascalSeconds),
        Setup(
            "ball_diameter_mm",
            NumberRange.Millimeters,
            (s, v) => s with { BallDiameter = Length.FromMillimeters(v) },
            s => s.BallDiameter?.Millimeters),
        Setup(
            "ball_density_g_ml",
            NumberRange.Density,
            (s, v) => s with { BallDensity = Density.FromGramsPerMilliliter(v) },
            s => s.BallDensity?.GramsPerMilliliter),
        Setup("fall_mm", NumberRange.Millimeters, (s, v) => s with { Fall = Length.FromMillimeters(v) }, s => s.Fall?.Millimeters),
        Setup(
            "jar_diameter_mm",
            NumberRange.Millimeters,
            (s, v) => s with { JarDiameter = Length.FromMillimeters(v) },
            s => s.JarDiameter?.Millimeters),
        Setup(
            "cylinder_height_mm",
            NumberRange.Millimeters,
            (s, v) => s with { CylinderHeight = Length.FromMillimeters(v) },
            s => s.CylinderHeight?.Millimeters),
        Setup(
            "cylinder_diameter_mm",
            NumberRange.Millimeters,
            (s, v) => s with { CylinderDiameter = Length.FromMillimeters(v) },
            s => s.CylinderDiameter?.Millimeters),
        Setup(
            "temp_coefficient_k",
            new("K", 0, 30_000),
            (s, v) => s with { TemperatureCoefficient = TemperatureCoefficient.Stated(v) },
            s => s.TemperatureCoefficient?.Kelvin),
        Number(
            "repeatability_pct",
            NumberRange.Percent,
            (r, v) => r with { Repeatability = Percentage.FromPercent(v) },
            r => r.Repeatability?.Percent) with { IsOfMethod = true },
        Number("scale_step_g", new("g", 0, 1e6, Above: true), (r, v) => r with { ScaleStep = Mass.FromGrams(v) }, r => r.ScaleStep?.Grams),
        Number(
            "too_stiff_mpas",
            NumberRange.Viscosity,
            (r, v) => r with { TooStiff = Viscosity.FromMilliPascalSeconds(v) },
            r => r.TooStiff?.MilliPascalSeconds),
    ];

    /// <summary>The keys by name; capitals make no difference.</summary>
    public static FrozenDictionary<string, HeaderKey> ByName { get; } = All.ToFrozenDictionary(
        k => k.Name,
        StringComparer.OrdinalIgnoreCase);

    /// <summary>What to expect of a method's name. A cup is told by its standard and number; one of each standard shows how.</summary>
    public static string MethodNames { get; } =
        "a method: "
        + string.Join(", ", Method.All.Where(m => Cups.Find(m) is null || m.Id.EndsWith("-4", StringComparison.Ordinal)).Select(m => m.Id))
        + "; other cups by their number";

    private static HeaderKey Text(string name, Action<RunHeader, string?> take, Func<Run, string?> show)
        => Once(name, (h, line) => take(h, line.Value.Length == 0 ? null : line.Value), f => show(f.Run)) with { IsText = true };

    private static HeaderKey Number(string name, NumberRange range, Func<Run, double, Run> take, Func<Run, double?> show)
        => Once(name, Number(range, (h, v) => h.Run = take(h.Run, v)), f => show(f.Run) is { } v ? FileNumbers.Show(v) : null);

    private static HeaderKey Setup(
        string name,
        NumberRange range,
        Func<MethodSetup, double, MethodSetup> take,
        Func<MethodSetup, double?> show)
        => Number(name, range, (r, v) => r with { Setup = take(r.Setup, v) }, r => show(r.Setup)) with { IsOfMethod = true };

    private static Action<RunHeader, HeaderLine> Number(NumberRange range, Action<RunHeader, double> take) => (header, line) =>
    {
        if (header.Values.Number(line.Place, line.Value, range) is { } value)
        {
            take(header, value);
        }
    };

    private static Run WithDensity(Run run, double value)
        => run with { Base = run.Base with { Density = Density.FromGramsPerMilliliter(value) } };

    private static string? Shown(Viscosity? viscosity) => viscosity is { } v ? FileNumbers.Show(v.MilliPascalSeconds) : null;

    private static string? Tolerance(RunFile file)
        => ((file.Run.Target as Target.Value)?.Tolerance ?? file.UnusedTolerance) is { } t ? FileNumbers.Show(t.Percent) : null;

    private static void TakeVersion(RunHeader header, HeaderLine line)
    {
        if (line.Value != Version)
        {
            header.Values.Findings.Refuse(
                line.Place, $"version {Version}, the one that this program reads; get the file again in that version or a newer program");
        }
    }

    private static void TakeId(RunHeader header, HeaderLine line)
    {
        if (Guid.TryParseExact(line.Value, "D", out var id))
        {
            header.Id = id;
            return;
        }

        header.Values.Findings.Refuse(line.Place, "a UUID as the log writes it, such as 0199d3a0-5c1e-7b3a-9f10-2a6b8c4d0e11; leave the "
            + "line out if there is none");
    }

    private static void TakeString(RunHeader header, HeaderLine line)
    {
        if (header.Values.Rising(line.Place, line.Value, Columns.StringLength.Range!) is var (low, high))
        {
            header.Run = header.Run with { TargetString = new(Length.FromMillimeters(low), Length.FromMillimeters(high)) };
        }
    }

    private static void TakeMethod(RunHeader header, HeaderLine line)
    {
        if (Method.Find(line.Value) is { } method)
        {
            header.Run = header.Run with { Method = method };
            return;
        }

        header.Values.Findings.Refuse(line.Place, MethodNames);
    }
}

/// <summary>A header key that the format knows.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Take">Takes a line with it into the header.</param>
/// <param name="Show">The values that a file writes for it; none where it is not stated.</param>
internal sealed record HeaderKey(string Name, Action<RunHeader, HeaderLine> Take, Func<RunFile, IEnumerable<string>> Show)
{
    /// <summary>A key that stands once at most.</summary>
    public static HeaderKey Once(string name, Action<RunHeader, HeaderLine> take, Func<RunFile, string?> show)
        => new(name, take, f => show(f) is { } value ? [value] : []);

    /// <summary>Whether it may stand more than once.</summary>
    public bool Repeats { get; init; }

    /// <summary>Whether its value is a text, whatever it looks like.</summary>
    public bool IsText { get; init; }

    /// <summary>Whether it says something of the method.</summary>
    public bool IsOfMethod { get; init; }
}
