using CsCheck;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Tests.Support;
using Viscolog.Text;

namespace Viscolog.Tests.Plots;

public sealed class TerminalChartTests
{
    [Theory]
    [InlineData(72, 20, false, "chart-72x20.txt")]
    [InlineData(72, 20, true, "chart-72x20-plain.txt")]
    [InlineData(40, 10, false, "chart-40x10.txt")]
    [InlineData(40, 10, true, "chart-40x10-plain.txt")]
    [InlineData(100, 30, false, "chart-100x30.txt")]
    [InlineData(100, 30, true, "chart-100x30-plain.txt")]
    public void A_run_looks_as_expected(int width, int height, bool ascii, string file)
    {
        using var german = new CultureSwitch("de-DE");
        ExpectedFile.Check(file, string.Join('\n', TerminalChart.Draw(DosePlot.Of(SamplePictures.Full()), width, height, ascii)) + "\n");
    }

    [Theory]
    [InlineData(false, "chart-runs.txt")]
    [InlineData(true, "chart-runs-plain.txt")]
    public void Several_runs_look_as_expected(bool ascii, string file)
        => ExpectedFile.Check(file, string.Join('\n', TerminalChart.Draw(DosePlot.Of(SamplePictures.Several(3)), 72, 20, ascii)) + "\n");

    [Fact]
    public void No_line_is_too_long_no_chart_too_high_and_plain_is_plain()
    {
        var odd = OddPictures.All();
        Gen.Select(
            Gen.Int[1, 140],
            Gen.Int[1, 50],
            Gen.Bool,
            Gen.Int[0, odd.Count - 1],
            Gen.OneOf([.. RunPlots.Kinds(odd[0]).Select(k => Gen.Const(k))])).Sample((width, height, ascii, which, kind) =>
        {
            var lines = TerminalChart.Draw(RunPlots.Of(odd[which], kind), width, height, ascii);
            Assert.InRange(lines.Count, 1, height);
            Assert.All(lines, l => Assert.True(PlainText.Columns(l) <= Math.Max(width, 3), l));
            Assert.All(lines, l => Assert.DoesNotContain(l, c => char.IsControl(c) || (ascii && c is < ' ' or > '~')));
            Assert.All(lines, l => Assert.Equal(l.TrimEnd(), l));
        });
    }

    [Theory]
    [InlineData(false, "●◈⊗▸╌░")]
    [InlineData(true, "o@x>=:")]
    public void Each_thing_has_its_mark_in_the_plot(bool ascii, string marks)
    {
        var plot = string.Concat(TerminalChart.Draw(DosePlot.Of(SamplePictures.Full()), 72, 20, ascii).Take(14));
        Assert.All(marks, m => Assert.Contains(m, plot));
    }

    [Fact]
    public void The_reason_of_the_limit_can_be_read()
    {
        var text = string.Join(' ', TerminalChart.Draw(DosePlot.Of(SamplePictures.Full()), 72, 20, ascii: false));
        Assert.Contains("limit 3.60 %: the curve flattens from 3.6 %: more adds little body", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_run_says_so()
        => Assert.Contains(
            "nothing to show yet",
            string.Concat(TerminalChart.Draw(DosePlot.Of(SamplePictures.Empty()), 72, 20, ascii: false)),
            StringComparison.Ordinal);

    [Theory]
    [InlineData(39, 20)]
    [InlineData(72, 9)]
    public void Too_little_room_is_said_in_one_line(int width, int height)
        => Assert.Equal(
            "the chart needs 40 x 10 characters",
            Assert.Single(TerminalChart.Draw(DosePlot.Of(SamplePictures.Full()), width, height, ascii: false)));
}
