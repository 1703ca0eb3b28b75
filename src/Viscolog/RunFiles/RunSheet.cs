using Viscolog.Sheets;
using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>Runs as sheets of a workbook, and the workbook to begin with.</summary>
internal static class RunSheet
{
    /// <summary>An empty run to fill in, and beside it what each key and column means.</summary>
    public static IReadOnlyList<Sheet> Template()
    {
        string[] header =
        [
            "viscolog-run: 1",
            "name: New run",
            "base: ",
            "base_g: 100",
            "thickener: TA; range_pct=1-5",
            "target_mpas: 9000",
            "tolerance_pct: 15",
        ];
        string[] columns = ["time", "thickener", "added_g", "stir_s", "wait_s", "viscosity_mpas", "temp_c", "ph", "note"];
        var csv = string.Concat(header.Select(h => $"# {h}\n")) + string.Join(',', columns) + "\n";
        return
        [
            TableSheet.Of("run", System.Text.Encoding.UTF8.GetBytes(csv), IsText),
            new("help", [.. Help().Select(r => (SheetCell[])[.. r.Select(SheetCell.Of)])]),
        ];
    }

    /// <summary>Whether a key or column of run files holds text, whatever it looks like.</summary>
    public static bool IsText(string name)
        => HeaderKeys.ByName.TryGetValue(name, out var key)
            ? key.IsText
            : Columns.ByName.TryGetValue(name, out var column) && column.Range is null;

    private static IEnumerable<string[]> Help()
    {
        yield return ["Fill in the sheet 'run' from the top. This sheet is not read."];
        yield return ["A line that begins with # is about the whole run: its key is in column A, its value in column B. Lines that "
            + "aren't needed may be deleted."];
        yield return ["Below the column names goes one row for each thing done or read, in order. Columns may be moved or deleted."];
        yield return [];
        yield return ["key", "means"];
        yield return ["# base_g:", "g of base in the pot at the start"];
        yield return ["# thickener:", "its name; after semicolons range_pct=LOW-HIGH, the usual doses in g per 100 g of base, and other "
            + "traits"];
        yield return ["# target_mpas:", "the viscosity wanted, in mPa·s"];
        yield return ["# tolerance_pct:", "how far from it is still acceptable, in %"];
        yield return [];
        yield return ["column", "takes"];
        foreach (var column in Columns.All)
        {
            yield return [column.Name, column.Range is { } range ? range.Words(null) : "text"];
        }
    }
}
