using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>The standing times that a picture shows.</summary>
/// <param name="Seconds">The longest.</param>
internal sealed record StandingWindow(double Seconds)
{
    /// <summary>From here on the axis counts minutes.</summary>
    private const double MinutesFrom = 600;

    public string Unit => Seconds >= MinutesFrom ? "min" : "s";

    /// <summary>The longest, in the axis' unit.</summary>
    public double End => Of(TimeSpan.FromSeconds(Seconds));

    public static StandingWindow Of(IReadOnlyList<RunPicture> pictures)
    {
        var longest = pictures.SelectMany(Waits).Select(w => w.TotalSeconds).DefaultIfEmpty(0).Max();
        return new(longest > 0 ? longest : 60);
    }

    /// <summary>A time in the axis' unit.</summary>
    public double Of(TimeSpan wait) => wait.TotalSeconds / (Seconds >= MinutesFrom ? 60 : 1);

    private static IEnumerable<TimeSpan> Waits(RunPicture p)
        => p.Readings.Select(r => r.Wait).OfType<TimeSpan>().Concat(p.Steps.SelectMany(s => s.Way).Select(t => t.Wait));
}
