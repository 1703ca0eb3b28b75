using Viscolog.Core.Advising;
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
    public void Of_several_limits_the_first_is_drawn_and_files_and_characters_say_whose_it_is()
    {
        var picture = DosePlot.Of(SamplePictures.Several(3));
        var limit = Assert.Single(Elements(picture).OfType<Element.Limit>());
        Assert.Equal(3.8, limit.From, 12);
        Assert.Equal("beyond the limit of 3.80 %, glaze gel 03: supplier's range ends here", limit.Text);
        Assert.Contains("limit of glaze gel 03: 3.80 %", string.Join(' ', TerminalChart.Draw(picture, 100, 30, ascii: false)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_that_all_runs_share_is_nobodys()
    {
        var shared = new DoseLimit(Dose.FromPercent(4), "the range ends");
        var limit = Assert.Single(Elements(DosePlot.Of([.. SamplePictures.Several(3).Select(r => r with { Limit = shared })])).OfType<Element.Limit>());
        Assert.Equal(("beyond the limit of 4.00 %: the range ends", "limit: the range ends"), (limit.Text, limit.Word));
    }

    [Fact]
    public void One_thickeners_limit_says_nothing_of_anothers_doses()
    {
        var full = SamplePictures.Full();
        Assert.Empty(Elements(DosePlot.Of([full, full with { Thickener = "TB" }])).OfType<Element.Limit>());
        Assert.Single(Elements(DosePlot.Of([full, full])).OfType<Element.Limit>());
    }

    [Fact]
    public void Several_targets_stand_each_in_a_row_of_its_own_with_the_name_of_its_run()
    {
        var other = SamplePictures.Full("other") with { Target = ViscosityBand.Around(SamplePictures.Mpas(9000), Percentage.FromPercent(10)) };
        var targets = Elements(DosePlot.Of([SamplePictures.Full("one"), other])).OfType<Element.Target>().ToList();
        Assert.Equal([0, 1], targets.Select(t => t.Row));
        Assert.StartsWith("target of one 12\u2009000", targets[0].Text, StringComparison.Ordinal);
        Assert.StartsWith("target of other 9\u2009000", targets[1].Text, StringComparison.Ordinal);
        Assert.Null(Assert.Single(Elements(DosePlot.Of([other, other])).OfType<Element.Target>()).Row);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Each_run_has_its_name_in_the_legend_of_files_and_of_characters(string kind)
    {
        var runs = SamplePictures.Several(3);
        var picture = RunPlots.Of(runs, Enum.Parse<PlotKind>(kind));
        var (file, text) = (System.Text.Encoding.UTF8.GetString(PictureFile.Svg(picture)), string.Join(' ', TerminalChart.Draw(picture, 100, 30, ascii: false)));
        Assert.All(runs, r => Assert.Contains(r.Name!, file, StringComparison.Ordinal));
        Assert.All(runs, r => Assert.Contains(r.Name!, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Steps_of_several_runs_say_whose_they_are()
    {
        var ends = Assert.Single(Elements(RunPlots.Of(SamplePictures.Several(2), PlotKind.Settling)).OfType<Element.Ends>());
        Assert.Equal("A 0.00 %, A 0.60 %, A 1.50 %, A 2.20 %, B 0.00 %, B 0.70 %, B 1.50 %, B 2.30 %", string.Join(", ", ends.Traces.Select(t => t.Text)));
    }

    [Fact]
    public void Readings_keep_their_letters_where_no_value_has_settled_yet()
    {
        var runs = SamplePictures.Several(2).Select(r => r with { Steps = [] }).ToList();
        Assert.Contains("A reading, a settled  A glaze gel 01  B glaze gel 02", string.Join(' ', TerminalChart.Draw(DosePlot.Of(runs), 100, 20, ascii: false)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_without_a_wait_is_said_to_be_missing_in_characters_too()
        => Assert.Contains("1 reading without a wait not shown", string.Join(' ', TerminalChart.Draw(RunPlots.Of([SamplePictures.OneReading()], PlotKind.Settling), 72, 20, ascii: false)), StringComparison.Ordinal);

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
