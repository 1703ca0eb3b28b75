using Viscolog.Sheets;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>Workbooks in and out, by the commands.</summary>
public sealed class WorkbookCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_log_goes_to_workbooks_and_comes_back_to_the_last_cell()
    {
        string[] samples =
        [
            .. new[] { "", "checks", "methods", "pair", "materials", "oils" }.Select(s => Path.Combine(Checkout.Root, "sample-runs", s)),
        ];
        var (first, second) = (_folder.Of("first"), _folder.Of("second"));
        Done(["import", .. samples, "--log", first]);
        Done("export", "--all", "--xlsx", "-o", _folder.Of("books"), "--log", first);
        Assert.All(Directory.GetFiles(_folder.Of("books")), f => Assert.EndsWith(".xlsx", f, StringComparison.Ordinal));
        Done("import", _folder.Of("books"), "--log", second);
        Done("export", "--all", "-o", _folder.Of("before"), "--log", first);
        Done("export", "--all", "-o", _folder.Of("after"), "--log", second);
        Assert.Equal(19, Directory.GetFiles(_folder.Of("after")).Length);
        Assert.All(
            Directory.GetFiles(_folder.Of("before")),
            f => Assert.Equal(File.ReadAllText(f), File.ReadAllText(Path.Combine(_folder.Of("after"), Path.GetFileName(f)))));
    }

    [Theory]
    [InlineData("advise")]
    [InlineData("fit")]
    [InlineData("check")]
    [InlineData("report")]
    [InlineData("batch", "--to", "5kg")]
    public void Whatever_takes_a_run_file_takes_a_workbook(string command, params string[] more)
    {
        var sample = Checkout.Sample("lantern-gel-06.csv");
        Done("import", sample, "--log", _folder.Of("log"));
        Done("export", "1", "-o", _folder.Of("run.xlsx"), "--log", _folder.Of("log"));
        var (sheet, text) = (Called.With([command, _folder.Of("run.xlsx"), .. more]), Called.With([command, sample, .. more]));
        Assert.Equal(text.Code, sheet.Code);
        Assert.NotInRange(text.Code, 1, 2);
        // The log gives the run a UUID, which stands at the end of a report.
        Assert.Equal(text.Output.Split("from Lantern gel 06")[0], sheet.Output.Split("from Lantern gel 06")[0]);
    }

    [Fact]
    public void The_template_is_a_run_that_wants_to_be_read()
    {
        Done("template", "-o", _folder.Of("run.xlsx"));
        var advised = Called.With("advise", _folder.Of("run.xlsx"));
        Assert.Equal((0, ""), (advised.Code, advised.Error));
        Assert.Contains("READ the pot", advised.Output, StringComparison.Ordinal);
        Assert.Equal(1, Called.With("template", "-o", _folder.Of("run.ods")).Code);
        Assert.Equal(2, Called.With("template", "-o", _folder.Of("run.xlsx")).Code);
    }

    [Theory]
    [InlineData("export", "1", "--xlsx")]
    [InlineData("export", "1", "--xlsx", "--spreadsheet-safe", "-o", "a.xlsx")]
    public void A_workbook_needs_a_file_and_no_marks(params string[] args) => Assert.Equal(1, Called.With(args).Code);

    [Fact]
    public void A_report_has_each_table_as_a_sheet_and_its_numbers_as_numbers()
    {
        Done("report", Checkout.Sample("lantern-gel-06.csv"), "-o", _folder.Of("report.xlsx"));
        using var zip = System.IO.Compression.ZipFile.OpenRead(_folder.Of("report.xlsx"));
        var sheets = zip.Entries.Where(e => e.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal)).ToList();
        Assert.True(sheets.Count >= 2);
        using var reader = new StreamReader(sheets[1].Open());
        Assert.Matches("<x:c r=\"[B-Z]+2\"><x:v>[0-9.]+</x:v>", reader.ReadToEnd());
        Assert.Contains(
            "Lantern gel 06",
            WorkbookReader.Read(File.ReadAllBytes(_folder.Of("report.xlsx"))).Rows![0].Cells[0],
            StringComparison.Ordinal);
    }

    private static void Done(params string[] args)
        => Assert.True(Called.With([.. args, "--quiet"]) is { Code: 0, Error: "" }, string.Join(' ', args));
}
