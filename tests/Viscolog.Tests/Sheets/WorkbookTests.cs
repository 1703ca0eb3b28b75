using System.IO.Compression;
using System.Text;
using CsCheck;
using Viscolog.RunFiles;
using Viscolog.Sheets;
using Viscolog.Tables;
using Viscolog.Tests.Fuzz;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Sheets;

public sealed class WorkbookTests
{
    public static TheoryData<string> Samples => [.. new[] { "", "checks", "methods", "pair" }
        .SelectMany(s => Directory.GetFiles(Path.Combine(Checkout.Root, "sample-runs", s), "*.csv"))
        .Select(f => Path.GetRelativePath(Checkout.Root, f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Samples))]
    public void A_sample_run_comes_back_without_the_loss_of_a_cell(string name)
    {
        var file = Assert.IsType<TableOutcome<RunFile>.Read>(RunFileReader.Read(Path.Combine(Checkout.Root, name))).File;
        Assert.Equal(FileText.Whole(file), FileText.Whole(Again(file)));
    }

    [Fact]
    public void Any_run_comes_back_without_the_loss_of_a_cell()
        => RunFileGen.Files.Sample(
            file => Assert.Equal(FileText.Whole(FileText.Read(FileText.Write(file))), FileText.Whole(Again(file))), iter: 300);

    [Fact]
    public void Numbers_are_numbers_and_texts_are_texts_and_none_is_a_formula()
    {
        var sheet = XmlOf(
            TableSheet.Workbook(
                [new("a", [[SheetCell.Of(0.1), SheetCell.Of("=1+1"), SheetCell.Of("007"), SheetCell.Of("a\r\nb\u0001_x0041_")]])]).Made!);
        Assert.DoesNotContain("<x:f", sheet, StringComparison.Ordinal);
        Assert.Contains("<x:v>0.1</x:v>", sheet, StringComparison.Ordinal);
        Assert.Contains("t=\"inlineStr\"", sheet, StringComparison.Ordinal);
        Assert.Contains("s=\"1\"", sheet, StringComparison.Ordinal);
        var read = WorkbookReader.Read(
            TableSheet.Workbook(
                [new("a", [[SheetCell.Of(0.1), SheetCell.Of("=1+1"), SheetCell.Of("007"), SheetCell.Of("a\r\nb\u0001_x0041_")]])]).Made!);
        Assert.Equal(["0.1", "=1+1", "007", "a\r\nb\u0001_x0041_"], read.Rows!.Single().Cells);
    }

    [Theory]
    [InlineData("<c r=\"A1\" s=\"1\"><v>46083</v></c>", "2026-03-02")]
    [InlineData("<c r=\"A1\" s=\"1\"><v>46083.5</v></c>", "2026-03-02T12:00:00")]
    [InlineData("<c r=\"A1\" s=\"2\"><v>46083</v></c>", "46083")]
    [InlineData("<c r=\"A1\"><v>1.50</v></c>", "1.5")]
    [InlineData("<c r=\"A1\"><f>1+1</f><v>2</v></c>", "2")]
    [InlineData("<c r=\"A1\" t=\"str\"><f>\"a\"</f><v>a_x000D_b</v></c>", "a\rb")]
    [InlineData("<c r=\"A1\" t=\"b\"><v>1</v></c>", "TRUE")]
    [InlineData("<c r=\"A1\" t=\"e\"><v>#DIV/0!</v></c>", "#DIV/0!")]
    [InlineData("<c r=\"A1\" t=\"s\"><v>0</v></c>", "shared")]
    [InlineData("<c r=\"A1\" t=\"s\"><v>1</v></c>", "rich text")]
    public void Cells_read_as_they_are_shown_or_plainer(string cell, string text)
        => Assert.Equal([text], WorkbookReader.Read(SheetZip.Of($"<row r=\"1\">{cell}</row>")).Rows!.Single().Cells);

    [Theory]
    [InlineData("<row r=\"2\"><c r=\"A2\"><v>1</v></c></row><row r=\"1\"><c r=\"A1\"><v>1</v></c></row>")]
    [InlineData("<row r=\"1\"><c r=\"B1\"><v>1</v></c><c r=\"A1\"><v>1</v></c></row>")]
    [InlineData("<row r=\"2000000000\"><c><v>1</v></c></row>")]
    [InlineData("<row r=\"1\"><c r=\"ZZZZZ1\"><v>1</v></c></row>")]
    [InlineData("<row r=\"1\"><c r=\"A1\" t=\"s\"><v>7</v></c></row>")]
    [InlineData("<row r=\"1\"><c r=\"A1\" t=\"x\"><v>7</v></c></row>")]
    [InlineData("<row r=\"1\">")]
    [InlineData("<!DOCTYPE a [<!ENTITY b \"c\">]><row r=\"1\"><c r=\"A1\"><v>&b;</v></c></row>")]
    public void What_no_spreadsheet_writes_is_damage(string rows)
        => Assert.Equal((null, "a damaged workbook"), WorkbookReader.Read(SheetZip.Of(rows)));

    [Fact]
    public void Bombs_are_not_unpacked()
    {
        using var stream = new MemoryStream(SheetZip.Of($"<row r=\"1\"><c r=\"A1\" t=\"str\"><v>{new string(' ', 1 << 22)}</v></c></row>"));
        Assert.InRange(stream.Length, 1, 1 << 20);
        Assert.Null(Packing.Trouble(stream, 100, 1 << 23));
        Assert.Equal("a workbook that unpacks to more than 1 MiB", Packing.Trouble(stream, 100, 1 << 20));
        Assert.Equal("a workbook of more than 3 parts", Packing.Trouble(stream, 3, 1 << 23));
    }

    [Fact]
    public void A_sheet_of_too_many_cells_is_refused()
    {
        var rows = string.Concat(
            Enumerable.Range(1, 1250).Select(i => FormattableString.Invariant($"<row r=\"{i}\"><c r=\"XFD{i}\"><v>1</v></c></row>")));
        Assert.Equal("a sheet of more than 20000000 cells", WorkbookReader.Read(SheetZip.Of(rows)).Trouble);
    }

    /// <summary>A text that stands once in the file and in every cell of it would be much when each cell is read.</summary>
    [Fact]
    public void A_text_in_very_many_cells_is_refused()
    {
        var rows = string.Concat(
            Enumerable.Range(1, 9000).Select(i => FormattableString.Invariant($"<row r=\"{i}\"><c r=\"A{i}\" t=\"s\"><v>0</v></c></row>")));
        var bytes = SheetZip.Of(rows, new string('x', SheetText.Longest));
        Assert.InRange(bytes.Length, 1, 1 << 20);
        Assert.Contains("a sheet of more than 256 MiB of text", Refusal(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void A_refusal_names_the_row_of_the_sheet()
    {
        string[] rows =
        [
            "<row r=\"2\"><c r=\"A2\" t=\"str\"><v># base_g:</v></c><c r=\"B2\"><v>120</v></c></row>",
            "<row r=\"4\"><c r=\"A4\" t=\"str\"><v>viscosity_mpas</v></c><c r=\"B4\" t=\"str\"><v>note</v></c></row>",
            "<row r=\"6\"><c r=\"A6\"><v>850</v></c><c r=\"B6\" t=\"str\"><v>two\nlines</v></c></row>",
            "<row r=\"9\"><c r=\"A9\" t=\"str\"><v>850 cP</v></c></row>",
        ];
        Assert.StartsWith(
            "pot.xlsx, line 9, column viscosity_mpas: read '850 cP'", Refusal(SheetZip.Of(string.Concat(rows))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("%PDF-1.7", "a PDF")]
    [InlineData("<!DOCTYPE html><p>", "a web page (HTML)")]
    [InlineData("{\"schema\":1}", "JSON")]
    [InlineData("1 {\"kind\":\"log\",\"version\":1}", "the journal of a log")]
    [InlineData("# viscolog-materials: 1\nkind,name\n", "a materials file")]
    [InlineData("\"# viscolog-oils: 1\",,\ndate,method,oil\n", "an oils file")]
    [InlineData("# name: sweep\nshear_rate_1_s,stress_pa\n", "a flow file")]
    [InlineData("batch,viscosity_mpas\n", "a trend file")]
    public void What_is_no_run_is_called_what_it_is(string text, string expected)
        => Assert.StartsWith(
            $"pot.xlsx: read {expected}, expected a run file", Refusal(Encoding.UTF8.GetBytes(text)), StringComparison.Ordinal);

    [Theory]
    [InlineData("mimetype", "application/vnd.oasis.opendocument.spreadsheet", "an OpenDocument spreadsheet")]
    [InlineData("word/document.xml", "<a/>", "a text document")]
    [InlineData("xl/workbook.bin", "", "a binary workbook (.xlsb)")]
    [InlineData("photo.jpg", "", "a zip file")]
    [InlineData("[Content_Types].xml", "<a/>", "a damaged workbook")]
    public void A_zip_that_is_no_workbook_is_called_what_it_is(string part, string text, string expected)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            SheetZip.Put(zip, part, text);
        }

        Assert.StartsWith($"pot.xlsx: read {expected}, expected a run file", Refusal(stream.ToArray()), StringComparison.Ordinal);
    }

    private static string Refusal(byte[] bytes)
        => Assert.IsType<TableOutcome<RunFile>.Refused>(RunFileReader.Parse("pot.xlsx", bytes)).Refusal.Text;

    private static RunFile Again(RunFile file)
    {
        var bytes = TableSheet.Workbook([TableSheet.Of("run", FileText.Bytes(file), RunSheet.IsText)]).Made!;
        var outcome = RunFileReader.Parse("pot.xlsx", bytes);
        return outcome is TableOutcome<RunFile>.Read read
            ? read.File
            : throw new InvalidOperationException(((TableOutcome<RunFile>.Refused)outcome).Refusal.Text);
    }

    private static string XmlOf(byte[] workbook)
    {
        using var zip = new ZipArchive(new MemoryStream(workbook));
        using var reader = new StreamReader(zip.Entries.Single(e => e.FullName.Contains("worksheets", StringComparison.Ordinal)).Open());
        return reader.ReadToEnd();
    }
}
