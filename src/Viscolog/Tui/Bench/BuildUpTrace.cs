using System.Collections.Immutable;
using Viscolog.Feeds;

namespace Viscolog.Tui.Bench;

/// <summary>What an instrument showed while the pot stands, thinned as the build-up slows down.</summary>
/// <param name="Points">How long it had stood, and what was shown, in the unit of the run's method; in the order of time.</param>
internal sealed record BuildUpTrace(ImmutableArray<(TimeSpan Stood, double Shown)> Points)
{
    /// <summary>A trace of which nothing is known yet.</summary>
    public static readonly BuildUpTrace None = new([]);

    private static readonly TimeSpan Least = TimeSpan.FromSeconds(2);

    private Series Series { get; init; } = new(Least);

    /// <summary>The trace with what is shown now; one that began before the last stirring begins anew.</summary>
    /// <param name="at">The time.</param>
    /// <param name="stood">How long the pot has stood; null while it is stirred, or where that is not known.</param>
    /// <param name="shown">What is shown; only a value above 0 is kept.</param>
    public BuildUpTrace With(DateTimeOffset at, TimeSpan? stood, double shown)
    {
        if (stood is not { } standing || shown <= 0)
        {
            return stood is null ? None : this;
        }

        var trace = !Points.IsEmpty && standing < Points[^1].Stood ? None : this;
        var (series, keeps) = trace.Series.With(at, null, standing);
        return new BuildUpTrace(keeps ? trace.Points.Add((standing, shown)) : trace.Points) { Series = series };
    }
}
