using Viscolog.Store.Copy;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Store;
using Viscolog.Tests.Support;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Runs;

namespace Viscolog.Tests.Tui;

/// <summary>The list of runs: words, orders, and what was put away.</summary>
public sealed class RunsStateTests
{
    [Theory]
    [InlineData("", "4 3 2 1")]
    [InlineData("gel", "4 2 1")]
    [InlineData("gel quay", "2 1")]
    [InlineData("QUAY ta", "3 2 1")]
    [InlineData("2026-03-04", "3")]
    [InlineData("lot-9", "2")]
    [InlineData("gel nothing", "")]
    public void Every_word_has_to_stand_in_some_column(string filter, string shown)
        => Assert.Equal(shown, Numbers(State().Search(filter)));

    [Fact]
    public void The_orders_go_round_and_the_chosen_run_stays_chosen()
    {
        var state = State().Move(1);
        Assert.Equal(3, state.Current!.Number);
        var seen = new List<string>();
        for (var i = 0; i < 4; i++)
        {
            seen.Add(Numbers(state));
            state = state.Sort();
            Assert.Equal(3, state.Current!.Number);
        }

        Assert.Equal(["4 3 2 1", "1 2 4 3", "4 3 2 1", "4 3 2 1"], seen, StringComparer.Ordinal);
        Assert.Equal(RunOrder.Number, state.Order);
    }

    [Fact]
    public void First_and_last_are_one_key_away_and_nothing_lies_beyond_them()
    {
        var state = State();
        Assert.Equal(1, state.Move(int.MaxValue).Current!.Number);
        Assert.Equal(4, state.Move(int.MaxValue).Move(-int.MaxValue).Current!.Number);
        Assert.Null(State().Search("nothing").Move(1).Current);
    }

    [Fact]
    public void A_click_chooses_a_run_and_one_more_opens_it()
    {
        var state = State();
        Assert.Null(RunsPage.Clicked(state, 2, 24));
        Assert.Null(RunsPage.Clicked(state, 7, 24));
        Assert.Equal(new RunsEvent.Moved(2), RunsPage.Clicked(state, 5, 24));
        Assert.Equal(new RunsEvent.Opened(), RunsPage.Clicked(state.Move(2), 5, 24));
        // Twelve rows hold six runs; in a longer list they scroll.
        var many = new RunsState([.. Enumerable.Range(1, 40).Select(i => Summary(i, "gel", "Quay base", null, 2))]).Move(20);
        var place = Page.First(20, 40, 6);
        Assert.Equal(new RunsEvent.Moved(place - 20), RunsPage.Clicked(many, 3, 12));
    }

    /// <summary>The words are those of <c>practice replay</c>, broken to the screen.</summary>
    [Theory]
    [InlineData(58)]
    [InlineData(118)]
    public void A_run_is_gone_through_again_reading_by_reading(int columns)
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(FileText.Read(File.ReadAllText(Checkout.Sample("lantern-gel-07.csv"))), CancellationToken.None);
        TuiContext context = new(log, TimeProvider.System, new(hasColor: true), IsAscii: false);
        var step = RunsSteps.Next(RunsState.Of(context), new RunsEvent.Replayed(), default);
        var stage = new OneAnswer<RunsEvent>(context);
        Assert.Single(step.Effects).Perform(stage);
        var made = Assert.IsType<RunsEvent.ReplayMade>(stage.Answer);
        Assert.StartsWith("Lantern gel 07", made.Title, StringComparison.Ordinal);
        var lines = made.Lines(columns).ToList();
        Assert.All(lines, l => Assert.True(l.Length <= columns, l));
        Assert.Equal(6, lines.Count(l => l.StartsWith("Reading ", StringComparison.Ordinal)));
        Assert.Contains("known     Read 4\u2009460 mPa·s after 3 min 00 s at 2.00 %.", string.Join('\n', lines), StringComparison.Ordinal);
        Assert.Single(RunsSteps.Next(step.State, made, default).Effects);
    }

    [Fact]
    public void A_run_without_a_reading_has_nothing_to_go_through()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(FileText.Read("# name: empty\n# base_g: 120\n# thickener: TA\nadded_g,viscosity_mpas\n0.6,\n"), CancellationToken.None);
        TuiContext context = new(log, TimeProvider.System, new(hasColor: true), IsAscii: false);
        var stage = new OneAnswer<RunsEvent>(context);
        Assert.Single(RunsSteps.Next(RunsState.Of(context), new RunsEvent.Replayed(), default).Effects).Perform(stage);
        Assert.Equal(new RunsEvent.Told("that run has no reading yet"), stage.Answer);
    }

    /// <summary>A stage that works things out at once and keeps the last answer.</summary>
    private sealed class OneAnswer<TEvent>(TuiContext context) : IStage<TEvent>
        where TEvent : class
    {
        public TEvent? Answer { get; private set; }

        public TuiContext Context => context;

        public void Send(TEvent @event) => Answer = @event;

        public T? Ask<T>(Form<T> form)
            where T : class => null;

        public void Show(ScreenView screen)
        {
        }

        public void Work(string what, Func<TEvent> work, Func<string, TEvent> failed) => Send(work());

        public void Ring()
        {
        }

        public void Close()
        {
        }

        public void Copy(string text)
        {
        }
    }

    [Fact]
    public void A_run_that_was_put_away_is_hidden_until_asked_for_and_comes_back()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("dusk", 2), CancellationToken.None);
        log.Import(Bench.File("lantern", 2), CancellationToken.None);
        Assert.True(log.Archive(2, true) is Viscolog.Store.WriteOutcome.Saved);
        var state = RunsState.Of(new TuiContext(log, TimeProvider.System, new(hasColor: false), IsAscii: true));
        Assert.Equal("1", Numbers(state));
        Assert.Equal("2 1", Numbers(state with { ShowsArchived = true }));
        Assert.Equal(2, log.Run(2)!.Rows.Length);
        Assert.True(log.Archive(2, false) is Viscolog.Store.WriteOutcome.Saved);
        Assert.Equal("2 1", Numbers(RunsState.Of(new TuiContext(log, TimeProvider.System, new(hasColor: false), IsAscii: true))));
    }

    private static string Numbers(RunsState state) => string.Join(' ', state.Shown.Select(r => r.Number));

    private static RunsState State() => new(
    [
        Summary(4, "Thread gel", "Harbour base", null, 5),
        Summary(3, "Wall paint", "Quay base", null, 4),
        Summary(2, "Lantern gel", "Quay base", "lot-9", 3),
        Summary(1, "Dusk gel", "Quay base", null, 2),
    ]);

    private static RunSummary Summary(int number, string name, string potBase, string? lot, int day)
    {
        var run = FileText.Read($"# name: {name}\n# base: {potBase}\n# base_g: 100\n# thickener: TA\nadded_g\n").Run with { Lot = lot };
        return new(number, Guid.NewGuid(), run, number, 0, number, new(2026, 3, day, 9, 0, 0, TimeSpan.Zero));
    }
}
