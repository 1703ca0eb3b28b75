using Viscolog.MaterialFiles;
using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>Materials to what is stored of them, and back. A round trip changes nothing.</summary>
internal static class StoredMaterials
{
    public static StoredMaterial Of(MaterialRow row) => new(MaterialCells.KindOf(row.Material), row.Material.Name, MaterialCells.Of(row));

    /// <exception cref="FormatException">It is not what <see cref="Of"/> gave.</exception>
    public static MaterialRow Read(StoredMaterial stored)
    {
        var findings = new Findings(stored.Name);
        return MaterialCells.Read(stored.Kind, stored.Name, stored.Cells, new(findings, new(',')), column => new(null, column, stored.Name))
            ?? throw new FormatException(findings.Refusal?.Text);
    }
}
