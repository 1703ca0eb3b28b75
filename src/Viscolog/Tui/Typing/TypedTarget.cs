using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Tables;
using Viscolog.Wording;

namespace Viscolog.Tui.Typing;

/// <summary>A target as it is typed: a viscosity, or what the run's own method would show, such as 92 KU or 38 s.</summary>
internal static class TypedTarget
{
    /// <summary>The target in mPa·s; null with the reason.</summary>
    public static double? Read(string text, Run? run, out string? error)
    {
        var typed = text.Trim();
        var scale = run?.MethodInForce.Scales.FirstOrDefault(s => !s.HasSpeed && s != InstrumentScale.Viscosity && s.Unit.Length > 0);
        if (run is null || scale is null || !typed.EndsWith(scale.Unit, StringComparison.OrdinalIgnoreCase) || IsViscosity(typed))
        {
            return TypedNumber.Read(typed, NumberRange.Viscosity, out error);
        }

        if (BenchValue.Read(typed[..^scale.Unit.Length], run, out error) is not { } value)
        {
            return null;
        }

        var converted = Conversions.ToBody(run.MethodInForce, value, run.Setup, run.Base.Density);
        error = converted is Conversion.Refused { Reason: var reason } ? MethodWords.Of(reason) : null;
        return (converted as Conversion.Converted)?.Reading.Body?.MilliPascalSeconds;
    }

    /// <summary>Whether the unit is one of viscosity that ends like the method's, as Pa·s ends like s.</summary>
    private static bool IsViscosity(string typed) => TypedNumber.Read(typed, NumberRange.Viscosity, out _) is not null;
}
