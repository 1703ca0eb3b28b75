using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Tui;

/// <summary>Moving through texts and lists.</summary>
public sealed class ScrollingTests
{
    [Fact]
    public void The_end_is_reached_at_once_and_left_line_by_line()
    {
        var end = new Scrolling(3, false).By(Scrolling.ToEnd);
        Assert.Equal(
            (90, 89, 88, 89), (end.First(100, 10), end.By(-1).First(100, 10), end.By(-2).First(100, 10), end.By(-2).By(1).First(100, 10)));
        Assert.Equal(90, end.By(5).First(100, 10));
        Assert.Equal(0, end.By(-Scrolling.ToEnd).First(100, 10));
        Assert.Equal(0, end.First(5, 10));
    }

    [Fact]
    public void No_move_leaves_the_text()
    {
        var start = default(Scrolling).By(-4);
        Assert.Equal((0, 7, 90), (start.First(100, 10), start.By(7).First(100, 10), start.By(400).First(100, 10)));
        Assert.Equal(0, default(Scrolling).By(Scrolling.ToEnd).By(-400).First(100, 10));
    }

    [Fact]
    public void A_place_stays_in_its_list()
    {
        Assert.Equal((0, 4, 2, 0), (
            Scrolling.Moved(2, -Scrolling.ToEnd, 5),
            Scrolling.Moved(2, Scrolling.ToEnd, 5),
            Scrolling.Moved(3, -1, 5),
            Scrolling.Moved(0, 1, 0)));
    }
}
