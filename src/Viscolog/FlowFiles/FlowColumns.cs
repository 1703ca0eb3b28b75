using Viscolog.Tables;

namespace Viscolog.FlowFiles;

/// <summary>The columns of a flow file, each with the numbers it takes.</summary>
internal static class FlowColumns
{
    public const string Rate = "shear_rate_1_s";
    public const string Stress = "stress_pa";
    public const string PascalSeconds = "viscosity_pas";
    public const string MilliPascalSeconds = "viscosity_mpas";
    public const string Speed = "rpm";
    public const string Torque = "torque_pct";

    // Far below what any instrument shows, and far above where products of such numbers vanish.
    private const double Least = 1e-9;

    public const string Example = "'shear_rate_1_s,stress_pa'";

    public static IReadOnlyDictionary<string, NumberRange> All { get; }
        = new Dictionary<string, NumberRange>(StringComparer.OrdinalIgnoreCase)
        {
            [Rate] = new("1/s", Least, 1e9),
            [Stress] = new("Pa", Least, 1e9),
            [PascalSeconds] = NumberRange.PascalSeconds,
            [MilliPascalSeconds] = NumberRange.Viscosity,
            [Speed] = new("1/min", Least, 1e6),
            [Torque] = new("% of full scale", Least, 200),
        };
}
