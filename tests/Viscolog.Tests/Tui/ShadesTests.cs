using Terminal.Gui.Drawing;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Tui;

/// <summary>
/// Colours that are read on their ground. Contrast after WCAG 2.2, "relative luminance" and "contrast ratio"; 4.5 to 1 is 1.4.3.
/// </summary>
public sealed class ShadesTests
{
    private const double Least = 4.5;

    private static readonly Tone[] Coloured = [Tone.Dim, Tone.Good, Tone.Caution, Tone.Bad];

    [Fact]
    public void The_formula_gives_the_standard_s_own_extremes()
    {
        Assert.Equal(21, Contrast(new(255, 255, 255), new(0, 0, 0)), 9);
        Assert.Equal(1, Contrast(new(118, 118, 118), new(118, 118, 118)), 9);
    }

    [Fact]
    public void On_a_ground_that_nobody_knows_colours_are_read_on_black_and_on_white()
        => Assert.All(Coloured, t =>
        {
            var color = new Shades(hasColor: true).ColorOf(t);
            Assert.True(Contrast(color, new(0, 0, 0)) >= Least, $"{t} on black: {Contrast(color, new(0, 0, 0))}");
            Assert.True(Contrast(color, new(255, 255, 255)) >= Least, $"{t} on white: {Contrast(color, new(255, 255, 255))}");
        });

    [Fact]
    public void On_a_theme_s_ground_every_tone_is_read()
    {
        foreach (var theme in new[] { Theme.Dark, Theme.Light })
        {
            Assert.All(Enum.GetValues<Tone>(), t =>
            {
                var (ink, ground) = (
                    new Shades(hasColor: true, theme).Of(t).Foreground, new Shades(hasColor: true, theme).Of(t).Background);
                Assert.True(Contrast(ink, ground) >= Least, $"{t} on {theme}: {Contrast(ink, ground)}");
            });
        }
    }

    [Fact]
    public void Without_colours_there_is_none()
        => Assert.All(Enum.GetValues<Theme>().SelectMany(m => Enum.GetValues<Tone>().Select(t => new Shades(hasColor: false, m).Of(t))),
            a => Assert.Equal((Color.None, Color.None), (a.Foreground, a.Background)));

    private static double Contrast(Color one, Color other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(Color c) => (0.2126 * Linear(c.R)) + (0.7152 * Linear(c.G)) + (0.0722 * Linear(c.B));

    private static double Linear(byte channel)
    {
        var share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
