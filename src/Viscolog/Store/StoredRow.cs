namespace Viscolog.Store;

/// <summary>A row as the journal and the query copy hold it; names and units are those of the run file's columns.</summary>
internal sealed record StoredRow
{
    public string? Time { get; init; }

    public double? TakenG { get; init; }

    public double? LetDownG { get; init; }

    public double? WaterG { get; init; }

    public string? Thickener { get; init; }

    public double? AddedG { get; init; }

    public decimal? StirS { get; init; }

    public decimal? WaitS { get; init; }

    public double? ViscosityMpas { get; init; }

    public decimal? CupS { get; init; }

    public double? Ku { get; init; }

    public double? TorquePct { get; init; }

    public double? Rpm { get; init; }

    public double? Reading { get; init; }

    public double? TempC { get; init; }

    public double? Ph { get; init; }

    public double? StringMm { get; init; }

    public string? Fault { get; init; }

    public string? Note { get; init; }

    public string? Void { get; init; }

    public string? Replaces { get; init; }

    /// <summary>Texts of the unknown columns, in their order.</summary>
    public string[]? Unknown { get; init; }
}
