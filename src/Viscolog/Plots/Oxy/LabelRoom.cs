using OxyPlot;

namespace Viscolog.Plots.Oxy;

/// <summary>Where the labels of a panel find room: not over marks, arrows or one another, and over as few lines as can be.</summary>
/// <param name="area">The panel on the screen.</param>
internal sealed class LabelRoom(OxyRect area)
{
    /// <summary>The cost of covering a mark or a label, beyond that of any number of lines.</summary>
    private const double CostOfTaken = 10_000;

    /// <summary>The cost of each place that comes before, where many lie close together: less than that of covering a line.</summary>
    public const double Close = 0.2;

    /// <summary>The same where few lie about a mark.</summary>
    public const double Wide = 1.5;

    /// <summary>The distance in px between the points of a line that are looked at.</summary>
    private const double Grain = 5;

    private readonly List<OxyRect> _taken = [];
    private readonly List<ScreenPoint> _lines = [];

    /// <summary>Nothing may stand here.</summary>
    public void Take(OxyRect box) => _taken.Add(box);

    /// <summary>Nothing may stand here.</summary>
    public void Take(ScreenPoint middle, double half) => Take(new OxyRect(middle.X - half, middle.Y - half, 2 * half, 2 * half));

    /// <summary>Nothing may stand along here.</summary>
    public void Take(ScreenPoint from, ScreenPoint to, double half)
    {
        foreach (var point in Along(from, to))
        {
            Take(point, half);
        }
    }

    /// <summary>Here is a line, which a label had better not cover.</summary>
    public void Avoid(IReadOnlyList<ScreenPoint> line)
    {
        for (var i = 1; i < line.Count; i++)
        {
            _lines.AddRange(Along(line[i - 1], line[i]));
        }
    }

    /// <summary>The best of several places for a label, which is then taken; null where each would cover a mark or another label.</summary>
    /// <param name="size">How large it is.</param>
    /// <param name="corners">Its upper left corner, the place to prefer first; each is moved into the panel.</param>
    /// <param name="costOfPlace">The cost of each place that comes before.</param>
    public OxyRect? Place(OxySize size, IEnumerable<ScreenPoint> corners, double costOfPlace)
    {
        OxyRect? best = null;
        var least = CostOfTaken;
        foreach (var (i, corner) in corners.Index())
        {
            var before = i * costOfPlace;
            if (before >= least)
            {
                break;
            }

            var box = Inside(size, corner);
            var cost = before + (_taken.Exists(t => Meet(t, box)) ? CostOfTaken : _lines.Count(box.Contains));
            if (cost < least)
            {
                (best, least) = (box, cost);
            }
        }

        if (best is { } found)
        {
            Take(found);
        }

        return best;
    }

    private static bool Meet(OxyRect a, OxyRect b) => a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    private static IEnumerable<ScreenPoint> Along(ScreenPoint from, ScreenPoint to)
    {
        var steps = (int)Math.Clamp((to - from).Length / Grain, 1, 500);
        return Enumerable.Range(0, steps + 1).Select(i => from + ((to - from) * (i / (double)steps)));
    }

    private OxyRect Inside(OxySize size, ScreenPoint corner) => new(
        Math.Max(area.Left, Math.Min(corner.X, area.Right - size.Width)),
        Math.Max(area.Top, Math.Min(corner.Y, area.Bottom - size.Height)),
        size.Width,
        size.Height);
}
