using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Feeds;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using BenchStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Bench.BenchState, Viscolog.Tui.Bench.BenchEvent>;

namespace Viscolog.Tui.Bench;

/// <summary>What instruments say by themselves, taken in at the bench.</summary>
internal static class BenchFeeds
{
    /// <summary>Parts of the advised grams at which the bell rings: slow down, enough, too much.</summary>
    private static readonly double[] Bells = [0.9, 1, 1.05];

    /// <summary>A balance that shows what was logged already, to so many grams, has not been set to zero since.</summary>
    private const double SameWeight = 0.02;

    /// <summary>Takes in what an instrument told.</summary>
    public static BenchStep Hear(BenchState state, FeedEvent told, DateTimeOffset now) => told switch
    {
        FeedEvent.Understood understood => Hear(state, understood, now),
        FeedEvent.Misread misread => state with
        {
            Feeds = state.Feeds.With(misread.From, Say($"{misread.From}: {misread.Count} not understood")),
        },
        FeedEvent.Raw => state,
        FeedEvent.Told { State: FeedState.Open or FeedState.Back } open => state with { Feeds = state.Feeds.With(open.From, null) },
        FeedEvent.Told other => state with { Feeds = state.Feeds.With(other.From, $"{other.From}: {Words(other)}") },
        _ => throw new ArgumentOutOfRangeException(nameof(told), told, "not a case of the closed set"),
    };

    /// <summary>How the instruments stand, in few words; empty where there is nothing to say.</summary>
    public static string Words(BenchState state, bool isAscii)
    {
        var pour = state.Feeds.Weight is { } weight and > 0 && Advised(state) is { } advised
            ? Say($"scale {weight:0.00} of {advised:0.00} g {Bar(weight / advised, isAscii)}")
            : state.Feeds.Weight is { } grams and > 0
            ? Say($"scale {grams:0.00} g (F2 takes it)")
            : "";
        return string.Join(" · ", state.Feeds.States.Values.Prepend(pour).Where(w => w.Length > 0));
    }

    private static BenchStep Hear(BenchState state, FeedEvent.Understood told, DateTimeOffset now)
    {
        var line = told.Line;
        var feeds = state.Feeds.With(told.From, null);
        feeds = feeds with
        {
            Beside = new BenchReadings(Temperature(line), line.Of(Columns.Ph), line.Of(Columns.StringLength), null).Or(feeds.Beside),
        };
        if (line.Of(Columns.AddedGrams) is { } weight)
        {
            if (feeds.Spent is { } spent && Math.Abs(weight - spent) < SameWeight)
            {
                return state with { Feeds = feeds };
            }

            feeds = feeds with { Spent = null };
            var rings = Advised(state) is { } advised && Bells.Any(b => (feeds.Weight ?? 0) < b * advised && weight >= b * advised);
            var weighed = state with { Feeds = feeds with { Weight = weight } };
            return rings ? new BenchStep(weighed, new Ring<BenchEvent>()) : weighed;
        }

        var method = state.Run.File.Run.MethodInForce;
        var shown = Columns.Values.FirstOrDefault(v => line.Of(v.Column) is not null);
        if (shown.Column is null)
        {
            return state with { Feeds = feeds };
        }

        if (!method.Scales.Contains(shown.Scale))
        {
            return state with
            {
                Feeds = feeds.With(told.From, Say($"{told.From}: shows {shown.Scale.Unit}, this run is read by {method.Id}")),
            };
        }

        var text = TypedNumber.Filled(line.Of(shown.Column)!.Value)
            + (shown.Scale.HasSpeed && line.Of(Columns.Speed) is { } rpm ? "@" + FileNumbers.Show(rpm) : "");
        var trace = feeds.Trace.With(told.At, state.Clock.Standing(now), line.Of(shown.Column)!.Value);
        var filled = state with { Feeds = feeds with { Filled = feeds.Filled + 1, Text = text, Trace = trace } };
        if (!feeds.TakesReadings || state.Clock.IsStirring || state.Doubted is not null || !state.Pasted.IsEmpty)
        {
            return filled;
        }

        var (series, keeps) = feeds.Series.With(told.At, line.IsStable, state.Clock.Standing(now));
        filled = filled with { Feeds = filled.Feeds with { Series = series } };
        return keeps ? BenchSteps.Enter(filled, new(text, "", ""), now) : filled;
    }

    private static double? Temperature(LineOutcome.Understood line)
        => line.Of(Columns.Temperature) ?? (line.Of(Columns.Fahrenheit) is { } f ? (f - 32) * 5 / 9 : null);

    private static double? Advised(BenchState state)
        => state is { IsWorking: false, Advice.Advice.Action: BenchAction.Add add } ? add.Poured.Grams : null;

    private static string Words(FeedEvent.Told told) => told.State switch
    {
        FeedState.Lost => Say("unplugged or closed; it is tried again"),
        FeedState.Silent or FeedState.Noise => told.Words,
        _ => Say("ended"),
    };

    private static string Bar(double part, bool isAscii)
    {
        const int cells = 10;
        var full = (int)Math.Clamp(Math.Floor(part * cells), 0, cells);
        var (done, left) = isAscii ? ('#', '.') : ('█', '░');
        var bar = new string(done, full) + new string(left, cells - full);
        return part >= Bells[^1] ? Say($"{bar} {100 * part:0} %, too much")
            : part >= 1 ? Say($"{bar} {100 * part:0} %, enough")
            : string.Create(Numbers, $"{bar} {100 * part:0} %");
    }
}

/// <summary>What instruments said last.</summary>
internal sealed record BenchNews
{
    /// <summary>Whether readings that have come to rest are logged by themselves.</summary>
    public bool TakesReadings { get; init; }

    /// <summary>What goes with the next reading.</summary>
    public BenchReadings Beside { get; init; } = BenchReadings.None;

    /// <summary>The grams on the balance; null where there is none.</summary>
    public double? Weight { get; init; }

    /// <summary>The grams that were logged and may still be on the balance; null where there are none.</summary>
    public double? Spent { get; init; }

    /// <summary>A number that changes with each reading that came.</summary>
    public int Filled { get; init; }

    /// <summary>The reading, as it would be typed.</summary>
    public string Text { get; init; } = "";

    /// <summary>What was shown since the pot was stirred.</summary>
    public BuildUpTrace Trace { get; init; } = BuildUpTrace.None;

    /// <summary>Which readings of the stream are logged by themselves.</summary>
    public Series Series { get; init; } = new(TimeSpan.FromSeconds(5));

    /// <summary>What is wrong, by instrument.</summary>
    public ImmutableSortedDictionary<string, string> States { get; init; } =
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>The news after something went into the pot: what was weighed is spent, and what was read is of the pot before.</summary>
    public BenchNews Poured() => this with
    {
        Spent = Weight ?? Spent,
        Weight = null,
        Trace = BuildUpTrace.None,
        Series = new(Series.Least),
        Filled = Filled + 1,
        Text = "",
    };

    /// <summary>The news with what is wrong with an instrument; null where nothing is.</summary>
    public BenchNews With(string from, string? words)
        => this with { States = words is null ? States.Remove(from) : States.SetItem(from, words) };
}
