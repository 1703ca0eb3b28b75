using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Wording;

namespace Viscolog.Typing;

/// <summary>What is typed as a reading, by the run's method.</summary>
internal static class BenchValue
{
    /// <summary>Stands between a torque and its speed.</summary>
    private const char At = '@';

    /// <summary>The unit beside the field.</summary>
    public static string Unit(Run run) => HasSpeed(run) && ReadsTorque(run) ? "%@rpm" : run.MethodInForce.Unit;

    /// <summary>The value; null with the reason.</summary>
    public static InstrumentValue? Read(string text, Run run, out string? error)
    {
        if (HasSpeed(run) && (text.Contains(At, StringComparison.Ordinal) || ReadsTorque(run)))
        {
            return Torque(text, run, out error);
        }

        var scale = run.MethodInForce.Scales.First(s => !s.HasSpeed);
        return TypedNumber.Read(text, Columns.Of(scale).Range!, out error, run.Base.Density) is { } value ? scale.Make(value) : null;
    }

    /// <summary>A value with its unit.</summary>
    public static string Words(InstrumentValue value)
    {
        // A viscosity to its last digit, as it confirms what was typed.
        var shown = ReadingWords.Exact(value);
        return value.Scale.HasSpeed || value.Scale == InstrumentScale.Plain ? shown : $"{shown} {value.Scale.Unit}";
    }

    private static bool HasSpeed(Run run) => run.MethodInForce.Scales.Any(s => s.HasSpeed);

    /// <summary>Whether the instrument shows torque: its factor is stated, or the run was read so before.</summary>
    private static bool ReadsTorque(Run run) => run.Setup.PerPercentTorque is not null || LastSpeed(run) is not null;

    private static InstrumentValue? Torque(string text, Run run, out string? error)
    {
        var parts = text.Split(At);
        if (parts.Length > 2 || (parts.Length == 1 && LastSpeed(run) is null))
        {
            error = Say("type torque and speed, such as 35.2@20 for 35.2 % at 20 rpm");
            return null;
        }

        var torque = TypedNumber.Read(parts[0], Columns.Of(InstrumentScale.Torque).Range!, out error);
        var speed = LastSpeed(run);
        if (error is null && parts.Length == 2)
        {
            speed = TypedNumber.Read(parts[1], Columns.Speed.Range!, out error);
        }

        return error is null ? InstrumentScale.Torque.Make(torque!.Value, speed!.Value) : null;
    }

    private static double? LastSpeed(Run run)
        => run.Entries.OfType<Entry.Measured>().Where(m => m.Counts).Select(m => m.Reading.Value?.Speed).LastOrDefault(s => s is not null);
}
