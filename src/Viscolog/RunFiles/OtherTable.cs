using System.Text;
using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>Tables of this program that are no runs.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Remedy">What reads it.</param>
internal sealed record OtherTable(string Name, string Remedy)
{
    /// <summary>What a file is that is no run; null where it may be one.</summary>
    public static OtherTable? Named(TableLayout layout)
    {
        var head = layout.Table.Span[..HeaderCells.LengthOf(layout.Table.Span)];
        var names = Encoding.UTF8.GetString(head).Split(layout.Separator).Select(n => n.Trim(' ', '"'))
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Has("viscolog-materials") ? new("a materials file", "'viscolog import' takes it into the log")
            : Has("viscolog-oils") ? new("an oils file", "'viscolog import' takes it into the log")
            : Has("base_g") ? null
            : Has("geometry") || names.Contains("shear_rate_1_s") ? new("a flow file", "'viscolog flow' reads it")
            : names.Contains("batch") && !names.Contains("wait_s") ? new("a trend file", "'viscolog trend' reads it")
            : null;

        bool Has(string key) => layout.Header.Any(h => h.Key.Equals(key, StringComparison.OrdinalIgnoreCase));
    }
}
