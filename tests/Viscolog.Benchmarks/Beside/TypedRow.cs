using CsvHelper;

namespace Viscolog.Benchmarks.Beside;

/// <summary>A row as a person would have CsvHelper read it.</summary>
[CsvRecord]
internal sealed partial record TypedRow
{
    [CsvColumn("thickener")]
    public string Thickener { get; init; } = "";

    [CsvColumn("added_g")]
    public double? Added { get; init; }

    [CsvColumn("stir_s")]
    public double? Stir { get; init; }

    [CsvColumn("wait_s")]
    public double? Wait { get; init; }

    [CsvColumn("viscosity_mpas")]
    public double Viscosity { get; init; }

    [CsvColumn("temp_c")]
    public double Temperature { get; init; }
}
