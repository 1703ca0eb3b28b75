using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>Value over standing time, one trace a step.</summary>
internal static class SettlingPlot
{
    public static Picture Of(IReadOnlyList<RunPicture> runs)
    {
        var (frame, time, window) = (new RunFrame(runs), StandingWindow.Of(runs), Window(runs));
        var steps = runs.SelectMany((p, i) => p.Steps.Select(s => (Run: p, Place: i, Step: s))).ToList();
        string Name(int place, PicturedStep step) => (frame.IsAlone ? "" : Letter(place) + " ") + PlotText.Percent(step.Dose);
        Element[] elements =
        [
            .. steps.SelectMany((s, trace) => Step(s.Run, s.Step, trace, time)),
            .. Legend(runs, frame),
            new Element.Ends([.. steps.Select(s => (new Spot(time.End, Level(s.Step)), Name(s.Place, s.Step)))])
            {
                Key = new(null, Say("settled")),
            },
        ];
        string[] missing = [.. Untimed(runs)];
        return new(frame.Title, frame.Subtitle(runs.All(p => p.Readings.IsEmpty) ? missing.Prepend(Say("no readings yet")) : missing),
        [
            new(time.Axis(time.End), frame.Viscosity(window.Low, window.High), [.. elements])
            {
                Nothing = steps.Count == 0 ? Say("nothing to show yet: no step has a reading") : null,
            },
        ])
        { Notes = [.. missing] };
    }

    private static IEnumerable<Element> Step(RunPicture run, PicturedStep step, int trace, StandingWindow time)
    {
        var timed = run.Readings.Where(r => r.Step == step.Step && r.Wait is not null);
        return
        [
            new Element.Line(Meaning.Way, trace, [.. step.Way.Select(t => time.Spot(t.Wait, t.Value.Median))]),
            new Element.Line(Meaning.SettledLevel, trace, [new(0, Level(step)), new(time.End, Level(step))]),
            .. RunFrame.Readings(timed, trace, r => time.Spot(r.Wait!.Value, r.Value)),
        ];
    }

    /// <summary>Lines that stand for all traces, as shape and colour tell the steps apart and the labels name them.</summary>
    private static IEnumerable<Element> Legend(IReadOnlyList<RunPicture> runs, RunFrame frame)
    {
        foreach (var marks in RunFrame.Readings(runs.SelectMany(p => p.Readings).Where(r => r.Wait is not null), null, _ => new(0, 0)))
        {
            yield return marks with { Points = [], Key = new(marks.Key!.Full) };
        }

        if (runs.Any(p => p.Steps.Any(s => !s.Way.IsEmpty)))
        {
            yield return new Element.Line(Meaning.Way, null, []) { Key = new(Say("expected on the way")) };
        }

        if (runs.Any(p => !p.Steps.IsEmpty))
        {
            yield return new Element.Line(Meaning.SettledLevel, null, []) { Key = new(Say("settled value")) };
        }

        foreach (var (i, key) in frame.Keys(KeyLook.Nothing).Index())
        {
            yield return key with { Key = new($"{Letter(i)}: {key.Key!.Full}", $"{Letter(i)}: {key.Key.Short}") };
        }
    }

    private static double Level(PicturedStep step) => step.Settled.Median.MilliPascalSeconds;

    private static string Letter(int i) => i < 26 ? ((char)('A' + i)).ToString() : $"{i + 1}";

    /// <summary>The values that the ways, the readings and the settled values take.</summary>
    private static DoseWindow Window(IReadOnlyList<RunPicture> runs)
        => DoseWindow.Of([.. runs.Select(p => p with
        {
            Curve = [],
            Target = null,
            Next = null,
            Steps = [.. p.Steps, .. p.Steps.SelectMany(s => s.Way).Select(t => Sharp(t.Value.Median))],
        })]);

    private static PicturedStep Sharp(Viscosity body) => new(0, default, new(body, body, body, default), []);

    private static IEnumerable<string> Untimed(IReadOnlyList<RunPicture> runs)
        => runs.Sum(p => p.Readings.Count(r => r.Wait is null)) switch
        {
            0 => [],
            1 => [Say("1 reading without a wait not shown")],
            var untimed => [Say($"{untimed} readings without a wait not shown")],
        };
}

/// <summary>The standing times that a picture shows.</summary>
/// <param name="Seconds">The longest.</param>
internal sealed record StandingWindow(double Seconds)
{
    /// <summary>From here on the axis counts minutes.</summary>
    private const double MinutesFrom = 600;

    private string Unit => Seconds >= MinutesFrom ? "min" : "s";

    /// <summary>The longest, in the axis' unit.</summary>
    public double End => Of(TimeSpan.FromSeconds(Seconds));

    public static StandingWindow Of(IReadOnlyList<RunPicture> pictures)
    {
        var longest = pictures.SelectMany(Waits).Select(w => w.TotalSeconds).DefaultIfEmpty(0).Max();
        return new(longest > 0 ? longest : 60);
    }

    /// <summary>The axis across.</summary>
    public Axis Axis(double end)
        => new(Say($"Standing time since stirring ended, {Unit}"), Say($"standing, {Unit}"), 0, end) { Room = RunFrame.Room };

    /// <summary>A body over its time.</summary>
    public Spot Spot(TimeSpan wait, Viscosity body) => new(Of(wait), body.MilliPascalSeconds);

    /// <summary>A time in the axis' unit.</summary>
    private double Of(TimeSpan wait) => wait.TotalSeconds / (Seconds >= MinutesFrom ? 60 : 1);

    private static IEnumerable<TimeSpan> Waits(RunPicture p)
        => p.Readings.Select(r => r.Wait).OfType<TimeSpan>().Concat(p.Steps.SelectMany(s => s.Way).Select(t => t.Wait));
}
