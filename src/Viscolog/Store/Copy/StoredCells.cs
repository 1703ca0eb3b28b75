using System.Collections.Immutable;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.Store.Journal;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.Store.Copy;

/// <summary>Materials and readings of oils to what is stored of them, the cells of their rows in files, and back.</summary>
internal static class StoredCells
{
    public static MaterialContent Of(MaterialRow row) => new(MaterialCells.KindOf(row.Material), row.Material.Name, MaterialCells.Of(row));

    /// <exception cref="FormatException">It is not what <see cref="Of"/> gave.</exception>
    public static MaterialRow Material(MaterialContent stored)
    {
        var findings = new Findings(stored.Name);
        if (!MaterialKind.All.Contains(stored.Kind, StringComparer.Ordinal))
        {
            throw new FormatException($"there is no material of the kind {OneLine.Quoted(stored.Kind)}");
        }

        if (!MaterialKind.CanName(stored.Kind, stored.Name))
        {
            throw new FormatException($"{OneLine.Quoted(stored.Name)} can't be the name of a {stored.Kind}");
        }

        return MaterialCells.Read(stored.Kind, stored.Name, stored.Cells, new(findings, new(',')), column => new(null, column, stored.Name))
            ?? throw new FormatException(findings.Refusal?.Text);
    }

    /// <exception cref="FormatException">It is not what an oil reading says.</exception>
    public static OilRow Oil(int number, IReadOnlyDictionary<string, string> stored)
    {
        var findings = new Findings(FormattableString.Invariant($"oil reading {number}"));
        var cells = stored.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase);
        return OilCells.Read(cells, new(findings, new(',')), c => new(null, c, OneLine.Quoted(cells.GetValueOrDefault(c ?? "", ""))))
            ?? throw new FormatException(findings.Refusal?.Text);
    }
}
