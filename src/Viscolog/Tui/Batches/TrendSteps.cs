using Viscolog.Core.Charting;
using Viscolog.Core.Checking;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tui.Pattern;
using TrendStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Batches.TrendState, Viscolog.Tui.Batches.TrendEvent>;

namespace Viscolog.Tui.Batches;

/// <summary>The trend screen as a machine.</summary>
internal static class TrendSteps
{
    /// <summary>The state of a trend that is opened, asked for.</summary>
    public static TrendStep Open(TrendState state) => Ask(state);

    public static TrendStep Next(TrendState state, TrendEvent @event, DateTimeOffset now) => @event switch
    {
        TrendEvent.Chose chose => Choose(state, chose.By),
        TrendEvent.Scrolled scrolled => state with { Passed = state.Passed.By(scrolled.By) },
        TrendEvent.Turned => state with { Scale = state.Scale == ChartScale.Log ? ChartScale.Linear : ChartScale.Log },
        TrendEvent.Exported => state.Picture() is { } picture
            ? new TrendStep(state, Export(picture, state.Current?.Name ?? "product")) : state,
        TrendEvent.Answered answered => state with { Trend = answered.Trend, Said = "" },
        TrendEvent.Told told => state with { Said = told.Said },
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static TrendStep Choose(TrendState state, int by)
    {
        var chosen = Math.Clamp(state.Chosen + by, 0, Math.Max(0, state.Products.Length - 1));
        return chosen == state.Chosen ? state : Ask(state with { Chosen = chosen, Trend = null, Passed = default, Said = "" });
    }

    private static TrendStep Ask(TrendState state)
        => state.Current is { } product ? new TrendStep(state, new WorkOutTrend(product)) : state;

    private static Export<TrendEvent> Export(TrendPicture picture, string product) => new(
        PathForm.Picture($"{RunFileName.Plain(product)}-trend"),
        (path, replace, _) => PictureFile.Write(picture.Picture(), path, replace),
        said => new TrendEvent.Told(said));
}

/// <summary>What can happen on the trend screen. The set of cases is closed.</summary>
internal abstract record TrendEvent
{
    private TrendEvent()
    {
    }

    /// <summary>Another product was chosen.</summary>
    internal sealed record Chose(int By) : TrendEvent;

    /// <summary>The findings were moved.</summary>
    internal sealed record Scrolled(int By) : TrendEvent;

    /// <summary>The other scale was called for.</summary>
    internal sealed record Turned : TrendEvent;

    /// <summary>The picture is to be written to a file.</summary>
    internal sealed record Exported : TrendEvent;

    /// <summary>The batches were worked out.</summary>
    internal sealed record Answered(ProductTrend Trend) : TrendEvent;

    /// <summary>What became of a file, or a fault of ours.</summary>
    internal sealed record Told(string Said) : TrendEvent;
}

/// <summary>Works a product's batches out; the log itself is read on the screen's own thread.</summary>
internal sealed record WorkOutTrend(Specification Product) : IEffect<TrendEvent>
{
    public void Perform(IStage<TrendEvent> stage)
    {
        var today = stage.Context.Today;
        var runs = BenchKnowledge.RunsOf(stage.Context.Log, Product);
        stage.Work(
            Say("trend"),
            () => new TrendEvent.Answered(ProductTrend.Of(Product, runs, today)),
            fault => new TrendEvent.Told(fault));
    }
}
