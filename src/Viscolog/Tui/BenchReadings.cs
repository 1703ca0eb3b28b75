using Viscolog.Core.Pots;
using Viscolog.RunFiles;

namespace Viscolog.Tui;

/// <summary>What was measured beside the next reading; kept until that is logged.</summary>
internal sealed record BenchReadings(double? TempC, double? Ph, double? StringMm, ObservedFault? Fault)
{
    public static BenchReadings None { get; } = new(null, null, null, null);

    public bool IsEmpty => this == None;

    public string Words => string.Join(", ", new[]
    {
        TempC is { } t ? FormattableString.Invariant($"{t:0.##} °C") : null,
        Ph is { } ph ? FormattableString.Invariant($"pH {ph:0.##}") : null,
        StringMm is { } mm ? FormattableString.Invariant($"string {mm:0.##} mm") : null,
        Fault is { } fault ? FaultNames.Of(fault) : null,
    }.OfType<string>());
}
