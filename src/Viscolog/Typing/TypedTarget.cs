using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Tables;
using Viscolog.Wording;

namespace Viscolog.Typing;

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

    /// <summary>What is wrong with it whatever the run's method is; null where some method would understand it.</summary>
    public static string? Wrong(string text)
    {
        var typed = text.Trim();
        return TypedNumber.Read(typed, NumberRange.Viscosity, out var error) is null && !Method.All.SelectMany(m => m.Scales).Any(Shows)
            ? error
            : null;

        bool Shows(InstrumentScale scale)
            => scale.Unit.Length > 0 && typed.EndsWith(scale.Unit, StringComparison.OrdinalIgnoreCase)
                && TypedNumber.Read(typed[..^scale.Unit.Length], NumberRange.Any, out _) is not null;
    }

    /// <summary>Whether the unit is one of viscosity that ends like the method's, as Pa·s ends like s.</summary>
    private static bool IsViscosity(string typed) => TypedNumber.Read(typed, NumberRange.Viscosity, out _) is not null;
}
