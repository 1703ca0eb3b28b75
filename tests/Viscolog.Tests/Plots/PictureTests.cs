using Viscolog.Core.Limits;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Plots.Oxy;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Plots;

public sealed class PictureTests
{
    public static TheoryData<string> Kinds => new(RunPlots.Kinds(SamplePictures.Several(3)).Select(k => k.ToString()));

    [Fact]
    public void Of_several_limits_the_first_is_shaded_and_each_says_whose_it_is()
    {
        var picture = DosePlot.Of(SamplePictures.Several(3));
        var limits = Elements(picture).OfType<Element.Limit>().ToList();
        Assert.Equal(
            [(3.8, true, 2), (3.9, false, 1), (4, false, 0)], limits.Select(l => (Math.Round(l.From, 9), l.IsShaded, l.Of!.Value)));
        Assert.Equal("beyond the limit of 3.80 %, glaze gel 03: the usual range ends at 3.8 %", limits[0].Text);
        Assert.Equal(
            ["limit of 3.90 %, glaze gel 02", "limit of 4.00 %, glaze gel 01"], limits.Skip(1).Select(l => l.Text), StringComparer.Ordinal);
        Assert.Contains("limit C 3.80 %", string.Join(' ', TerminalChart.Draw(picture, 100, 30, ascii: false)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_that_all_runs_share_is_nobodys()
    {
        var shared = new DoseLimit(Dose.FromPercent(4), new LimitReason.UsualRange());
        var limit = Assert.Single(
            Elements(DosePlot.Of([.. SamplePictures.Several(3).Select(r => r with { Limit = shared })])).OfType<Element.Limit>());
        Assert.Equal(
            ("beyond the limit of 4.00 %: the usual range ends at 4 %", "limit: the usual range ends at 4 %"),
            (limit.Text, limit.Word));
    }

    [Fact]
    public void One_thickeners_limit_says_nothing_of_anothers_doses()
    {
        var full = SamplePictures.Full();
        var limit = Assert.Single(Elements(DosePlot.Of([full, full with { Thickener = "TB" }])).OfType<Element.Limit>());
        Assert.False(limit.IsShaded);
        Assert.True(Assert.Single(Elements(DosePlot.Of([full, full])).OfType<Element.Limit>()).IsShaded);
    }

    [Fact]
    public void Several_targets_have_the_names_of_their_runs_and_dashes_of_their_own()
    {
        var other = SamplePictures.Full("other") with
        {
            Target = ViscosityBand.Around(SamplePictures.Mpas(9000), Percentage.FromPercent(10)),
        };
        var targets = Elements(DosePlot.Of([SamplePictures.Full("one"), other])).OfType<Element.Target>().ToList();
        Assert.Equal([0, 1], targets.Select(t => t.Of));
        Assert.Equal(["target of one", "target of other"], targets.Select(t => t.Text), StringComparer.Ordinal);
        Assert.Equal(["target A", "target B"], targets.Select(t => t.Word), StringComparer.Ordinal);
        Assert.Equal(2, targets.Select(t => Looks.Pen(Meaning.Target, t.Of).Dash).Distinct().Count());
        var common = Assert.Single(Elements(DosePlot.Of([other, other])).OfType<Element.Target>());
        Assert.Equal((null, "target"), (common.Of, common.Text));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Each_run_has_its_name_in_the_legend_of_files_and_of_characters(string kind)
    {
        var runs = SamplePictures.Several(3);
        var picture = RunPlots.Of(runs, Enum.Parse<PlotKind>(kind));
        var (file, text) = (
            System.Text.Encoding.UTF8.GetString(PictureFile.Svg(picture)),
            string.Join(' ', TerminalChart.Draw(picture, 100, 30, ascii: false)));
        Assert.All(runs, r => Assert.Contains(r.Name!, file, StringComparison.Ordinal));
        Assert.All(runs, r => Assert.Contains(r.Name!, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Steps_of_several_runs_say_whose_they_are()
    {
        var ends = Assert.Single(Elements(RunPlots.Of(SamplePictures.Several(2), PlotKind.Settling)).OfType<Element.Ends>());
        Assert.Equal(
            "A 0.00 %, A 0.60 %, A 1.50 %, A 2.20 %, B 0.00 %, B 0.70 %, B 1.50 %, B 2.30 %",
            string.Join(", ", ends.Traces.Select(t => t.Text)));
    }

    [Fact]
    public void Readings_keep_their_letters_where_no_value_has_settled_yet()
    {
        var runs = SamplePictures.Several(2).Select(r => r with { Steps = [] }).ToList();
        Assert.Contains(
            "A reading, a settled  A glaze gel 01  B glaze gel 02",
            string.Join(' ', TerminalChart.Draw(DosePlot.Of(runs), 100, 20, ascii: false)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_without_a_wait_is_said_to_be_missing_in_characters_too()
        => Assert.Contains(
            "1 reading without a wait not shown",
            string.Join(' ', TerminalChart.Draw(RunPlots.Of([SamplePictures.OneReading()], PlotKind.Settling), 72, 20, ascii: false)),
            StringComparison.Ordinal);

    /// <summary>On a grid of exp(x + 2y) the field is that function everywhere, as it is straight in the logarithm.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.25, 0.9)]
    [InlineData(2, 1)]
    [InlineData(1.99, 0.01)]
    public void A_field_is_straight_in_the_logarithm_between_its_places(double x, double y)
    {
        double[] across = [0, 1, 2], up = [0, 0.5, 1];
        var field = new Field([.. across], [.. up], [.. up.SelectMany(v => across.Select(u => Math.Exp(u + (2 * v))))]);
        Assert.Equal(Math.Exp(x + (2 * y)), field.At(x, y), 9);
    }

    private static IEnumerable<Element> Elements(Picture picture) => picture.Panels.SelectMany(p => p.Elements);
}
