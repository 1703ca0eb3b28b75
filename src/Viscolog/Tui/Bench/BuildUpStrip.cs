using System.Collections.Immutable;
using Viscolog.Core.Advising;

namespace Viscolog.Tui.Bench;

/// <summary>
/// How the pot builds up while it stands, as one short line up to the moment to read: what an instrument shows of this step, else the step
/// that was read last.
/// </summary>
internal static class BuildUpStrip
{
    private const string Rich = "▁▂▃▄▅▆▇█";
    private const string Plain = "_.-~=+*#";

    /// <summary>What differs by less than this, in logarithms, is drawn level: no instrument shows the same twice.</summary>
    private const double Level = 0.05;

    /// <summary>The line; empty where nothing is known of the way.</summary>
    /// <param name="trace">What an instrument showed of this step.</param>
    /// <param name="picture">The run's picture; null where there is none.</param>
    /// <param name="due">The moment to read.</param>
    /// <param name="standing">How long it has stood.</param>
    /// <param name="columns">Characters to fill.</param>
    /// <param name="isAscii">Whether only printable ASCII may be used.</param>
    public static string Of(BuildUpTrace trace, RunPicture? picture, TimeSpan due, TimeSpan standing, int columns, bool isAscii)
    {
        if (due <= TimeSpan.Zero || (Shown(trace) ?? Read(picture)) is not { } way)
        {
            return "";
        }

        var marks = isAscii ? Plain : Rich;
        return string.Concat(Enumerable.Range(0, columns).Select(i =>
        {
            var at = due * ((i + 0.5) / columns);
            var part = way.High > way.Low ? (way.Ln(at) - way.Low) / (way.High - way.Low) : 1;
            var mark = marks[(int)Math.Clamp(part * marks.Length, 0, marks.Length - 1)];
            return at <= standing ? mark : isAscii ? ' ' : '·';
        }));
    }

    private static Way? Shown(BuildUpTrace trace)
    {
        if (trace.Points.Length < 2)
        {
            return null;
        }

        ImmutableArray<(TimeSpan, double Ln)> points = [.. trace.Points.Select(p => (p.Stood, Math.Log(p.Shown)))];
        var low = points.Min(p => p.Ln);
        return new(points, low, Math.Max(points.Max(p => p.Ln), low + Level));
    }

    private static Way? Read(RunPicture? picture)
        => picture?.Steps.LastOrDefault(s => s.Way.Length > 1) is { } step
            ? new([.. step.Way.Select(w => (w.Wait, w.Value.Median.Ln))], step.Way[0].Value.Median.Ln, step.Settled.Median.Ln)
            : null;

    /// <summary>A way through two points or more, with what is drawn lowest and highest.</summary>
    private sealed record Way(ImmutableArray<(TimeSpan At, double Ln)> Points, double Low, double High)
    {
        public double Ln(TimeSpan at)
        {
            var next = 1;
            while (next < Points.Length - 1 && Points[next].At < at)
            {
                next++;
            }

            var (before, after) = (Points[next - 1], Points[next]);
            return before.Ln + (Math.Clamp((at - before.At) / (after.At - before.At), 0, 1) * (after.Ln - before.Ln));
        }
    }
}
