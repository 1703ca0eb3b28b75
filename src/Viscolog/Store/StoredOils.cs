using System.Collections.Immutable;
using Viscolog.OilFiles;
using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>Readings of certified oils from what is stored of them.</summary>
internal static class StoredOils
{
    /// <exception cref="FormatException">It is not what an oil reading says.</exception>
    public static OilRow Read(OilDoc doc)
    {
        var findings = new Findings(FormattableString.Invariant($"oil reading {doc.Id}"));
        return OilCells.Read(doc.Cells.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase), new(findings, new(',')), column => new(null, column, OneLine.Quoted(doc.Cells.GetValueOrDefault(column ?? "", "")))) is { } row
            ? row with { Void = doc.Voided }
            : throw new FormatException(findings.Refusal?.Text);
    }
}
