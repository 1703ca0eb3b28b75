using Viscolog.Core.Advising;

namespace Viscolog.Tui.Bench;

/// <summary>How the pot builds up while it stands, as one short line: the last step that was read, up to the moment to read.</summary>
internal static class BuildUpStrip
{
    private const string Rich = "▁▂▃▄▅▆▇█";
    private const string Plain = "_.-~=+*#";

    /// <summary>The line; empty where nothing is known of the way.</summary>
    /// <param name="picture">The run's picture; null where there is none.</param>
    /// <param name="due">The moment to read.</param>
    /// <param name="standing">How long it has stood.</param>
    /// <param name="columns">Characters to fill.</param>
    /// <param name="isAscii">Whether only printable ASCII may be used.</param>
    public static string Of(RunPicture? picture, TimeSpan due, TimeSpan standing, int columns, bool isAscii)
    {
        if (picture?.Steps.LastOrDefault(s => s.Way.Length > 1) is not { } step || due <= TimeSpan.Zero)
        {
            return "";
        }

        var (low, high) = (step.Way[0].Value.Median.Ln, step.Settled.Median.Ln);
        var marks = isAscii ? Plain : Rich;
        return string.Concat(Enumerable.Range(0, columns).Select(i =>
        {
            var at = due * ((i + 0.5) / columns);
            var part = high > low ? (Ln(step, at) - low) / (high - low) : 1;
            var mark = marks[(int)Math.Clamp(part * marks.Length, 0, marks.Length - 1)];
            return at <= standing ? mark : isAscii ? ' ' : '·';
        }));
    }

    private static double Ln(PicturedStep step, TimeSpan at)
    {
        var next = 1;
        while (next < step.Way.Length - 1 && step.Way[next].Wait < at)
        {
            next++;
        }

        var (before, after) = (step.Way[next - 1], step.Way[next]);
        var part = Math.Clamp((at - before.Wait) / (after.Wait - before.Wait), 0, 1);
        return before.Value.Median.Ln + (part * (after.Value.Median.Ln - before.Value.Median.Ln));
    }
}
