namespace Viscolog.Cli.Json;

/// <summary>A value in another unit as <c>viscolog.units/1</c>.</summary>
internal sealed record UnitAnswer(double Value, string Unit, double Result, string ResultUnit)
{
    public string Schema { get; } = "viscolog.units/1";
}
