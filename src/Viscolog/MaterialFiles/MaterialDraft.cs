using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Tables;

namespace Viscolog.MaterialFiles;

/// <summary>A material while its cells are taken in.</summary>
internal sealed class MaterialDraft(string kind, string name, ValueReader values)
{
    public ValueReader Values => values;

    public Thickener Thickener { get; set; } = new(name);

    public Specification Specification { get; set; } = new(name);

    public Method? Method { get; set; }

    public Percentage? Repeatability { get; set; }

    public double? Wanted { get; set; }

    public double? Low { get; set; }

    public double? High { get; set; }

    public Percentage? Tolerance { get; set; }

    public string? Reads { get; set; }

    public string? Source { get; set; }

    public string? Note { get; set; }

    public bool IsRetired { get; set; }

    /// <summary>The material; null where the file is refused.</summary>
    /// <param name="row">The row as a whole, for what no single cell is to blame for.</param>
    public Material? Finish(Place row)
    {
        Material? made = kind switch
        {
            MaterialKind.Base => new Material.OfBase(new(name, Thickener.Density)),
            MaterialKind.Thickener => new Material.OfThickener(Thickener),
            MaterialKind.Method
                => Method is { } method
                    ? new Material.OfMethod(new(name, method, Repeatability))
                    : Missing(row, "a method in column method"),
            MaterialKind.Instrument
                => Reads is { } reads
                    ? new Material.OfInstrument(name, reads, Source)
                    : Missing(row, "how its lines are read in column reads"),
            _ => new Material.OfSpecification(Specification with { Method = Method, Body = Body(row) }),
        };
        return values.Findings.Well ? made! with { Note = Note, IsRetired = IsRetired } : null;
    }

    private Material? Missing(Place row, string what)
    {
        values.Findings.Refuse(row, what);
        return null;
    }

    private Target? Body(Place row)
    {
        switch (Wanted, Low, High)
        {
            case ({ } wanted, null, null):
                return new Target.Value(Viscosity.FromMilliPascalSeconds(wanted), Tolerance);
            case (null, { } low, { } high) when low < high && Tolerance is null:
                return new Target.Ends(Viscosity.FromMilliPascalSeconds(low), Viscosity.FromMilliPascalSeconds(high));
            case (null, null, null) when Tolerance is null:
                return null;
            default:
                values.Findings.Refuse(
                    row, "one target: target_mpas with or without tolerance_pct, or target_low_mpas below target_high_mpas");
                return null;
        }
    }
}
