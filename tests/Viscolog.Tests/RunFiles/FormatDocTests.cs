using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.RunFiles;

public sealed class FormatDocTests
{
    private static readonly string Doc = File.ReadAllText(Path.Combine(Project.Root, "docs", "file-formats.md"));

    [Fact]
    public void The_example_reads_without_a_warning()
    {
        var file = FileText.Read(Doc.Split("```")[1].TrimStart());
        Assert.Empty(file.Warnings);
        Assert.Equal(5, file.Rows.Length);
        Assert.Equal(Quantity(0.5 * 2.4), Quantity(file.Run.PotNow().In("Tarn").Grams));
        Assert.Equal(170, file.Run.PotNow().Base.Grams);
        Assert.Contains(new Entry.Noted("over: the scale was read \"by eye\""), file.Run.Entries);
    }

    [Fact]
    public void Every_key_and_column_is_described()
        => Assert.All(
            HeaderKeys.All.Select(k => k.Name).Concat(Columns.All.Select(c => c.Name)),
            name => Assert.Contains($"`{name}`", Doc, StringComparison.Ordinal));

    [Fact]
    public void The_refusal_shown_is_the_one_that_is_given()
    {
        var rows = string.Concat(Enumerable.Repeat("60\n", 9));
        var refusal = FileText.Refusal("# base_g: 1\nviscosity_mpas\n" + rows + "850 cP\n");
        Assert.Contains(refusal, Doc, StringComparison.Ordinal);
    }

    private static double Quantity(double value) => Math.Round(value, 9);
}
