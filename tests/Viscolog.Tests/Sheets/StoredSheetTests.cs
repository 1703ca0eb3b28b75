using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Sheets;

/// <summary>
/// One run as a spreadsheet saved it again (LibreOffice 7.4, from the workbook that 'export --xlsx' wrote): as a workbook, with commas, and
/// where decimal commas are usual with semicolons and, in UTF-16, with tabs.
/// </summary>
public sealed class StoredSheetTests
{
    [Theory]
    [InlineData("every-cell.xlsx")]
    [InlineData("every-cell-commas.csv")]
    [InlineData("every-cell-semicolons.csv")]
    [InlineData("every-cell-tabs.csv")]
    public void What_a_spreadsheet_saved_says_the_same_to_the_last_cell(string name)
    {
        var (file, first) = (Read(name), Read("every-cell.csv"));
        Assert.NotNull(file.Id);
        Assert.Equal(FileText.Whole(first), FileText.Whole(file with { Id = null }));
    }

    private static RunFile Read(string name)
    {
        var path = Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Data", "spreadsheet", name);
        var outcome = RunFileReader.Read(path);
        return outcome is TableOutcome<RunFile>.Read read
            ? read.File
            : throw new InvalidOperationException(((TableOutcome<RunFile>.Refused)outcome).Refusal.Text);
    }
}
