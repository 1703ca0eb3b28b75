using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Store;
using Viscolog.Tests.Store;
using Viscolog.Tui;

namespace Viscolog.Tests.Tui;

/// <summary>Screens on a driver without a terminal: keys in, log and picture out.</summary>
public sealed class ScreenTests
{
    [Fact]
    public void Readings_and_doses_are_logged_by_keys_alone()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(RunFiles.FileText.Read("# name: keys\n# base: GB-40\n# base_g: 120\n# thickener: TA; range_pct=1-5\n# target_mpas: 9000\nadded_g,wait_s,viscosity_mpas\n,60,850\n"), CancellationToken.None);
        using var stage = new Stage(80, 24);
        using var screen = new BenchScreen(new(log, TimeProvider.System, new(hasColor: true), IsAscii: false), log.Run(1)!);
        stage.Show(screen);
        stage.WaitFor(() => !screen.State.IsWorking);
        Assert.Contains("ADD", stage.Text, StringComparison.Ordinal);

        stage.Type("+");
        Assert.IsType<Entry.Dosed>(log.Run(1)!.File.Run.Entries[^1]);
        stage.Press(Key.F3, Key.F3);
        stage.Type("1200");
        stage.Press(Key.Tab);
        stage.Type("90");
        stage.Press(Key.Tab);
        stage.Type("smooth");
        stage.Press(Key.Enter);
        var contents = log.Run(1)!.File.Contents().Select(r => r.Content).ToList();
        Assert.Equal((3, 90.0, "smooth"), (contents.Count, contents[2].Reading!.Wait!.Value.TotalSeconds, contents[2].Note));
        Assert.Contains("saved: 1200 mPa·s", stage.Text, StringComparison.Ordinal);

        stage.Type("12x");
        stage.Press(Key.Enter);
        Assert.Contains("! read the unit 'x', expected mPa·s", stage.Text, StringComparison.Ordinal);
        Assert.Equal(3, log.Run(1)!.Rows.Length);
        stage.End();
        Assert.Null(LogCheck.Of(log, null).Difference);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(60, 16)]
    [InlineData(40, 10)]
    public void The_list_searches_and_marks(int width, int height)
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("dusk", 2), CancellationToken.None);
        log.Import(Bench.File("lantern", 2), CancellationToken.None);
        using var stage = new Stage(width, height);
        using var screen = new RunsScreen(new(log, TimeProvider.System, new(hasColor: false), IsAscii: true));
        stage.Show(screen);
        if (width < 60)
        {
            Assert.Contains("the list needs 60 x 10", stage.Text, StringComparison.Ordinal);
            stage.End();
            return;
        }

        stage.Type("dusk");
        Assert.Contains("1 run of 2", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.F4);
        Assert.Contains("1 marked", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.Esc);
        Assert.False(screen.Quits);
        stage.Press(Key.Q.WithCtrl);
        Assert.True(screen.Quits);
        stage.End();
    }

    [Fact]
    public void A_practice_pot_is_played_by_keys_and_its_score_kept_beside_the_log()
    {
        using var bench = Bench.Filled();
        var before = new Snapshot(bench.Place);
        using (var log = Assert.IsType<LogOutcome.Opened>(PracticeLog.Open(bench.Place, TimeProvider.System)).Log)
        {
            using var stage = new Stage(80, 24);
            using var screen = new GameScreen(new(log, TimeProvider.System, new(hasColor: true), IsAscii: false, IsPractice: true), PracticeGame.Of(PracticeDifficulty.Find("easy")!, 7), "Player A");
            stage.Show(screen);
            stage.Press(Key.Enter);
            stage.Type("9");
            stage.Press(Key.Enter, Key.Enter);
            Assert.Contains("! stir it in first", stage.Text, StringComparison.Ordinal);
            stage.Press(Key.F3, Key.F3, Key.Enter, Key.F8);
            Assert.Contains("Ends over", stage.Text, StringComparison.Ordinal);
            stage.WaitFor(() => screen.State.Advised is not null);
            Assert.Contains("B advised", stage.Text, StringComparison.Ordinal);
            Assert.Contains("score kept under Player A", stage.Text, StringComparison.Ordinal);
            stage.Press(Key.F6);
            Assert.Contains("Dose 1 took the pot over", stage.Text, StringComparison.Ordinal);
            stage.Press(Key.F5);
            Assert.Null(screen.State.Path);
            stage.End();
        }

        var kept = Assert.Single(PracticeScores.Beside(bench.Place).All().Results);
        Assert.Equal(("Player A", "easy", 7, "over", 1), (kept.Player, kept.Pot, kept.Seed, kept.Verdict, kept.Doses));
        Assert.All(Directory.GetFiles(bench.Place.Folder).Where(before.Has), f => Assert.Equal(before.Bytes(f), File.ReadAllBytes(f)));
    }

    [Fact]
    public void The_demonstration_runs_by_keys()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        using var stage = new Stage(120, 40);
        using var screen = new DemoScreen(new(log, TimeProvider.System, new(hasColor: true), IsAscii: false, IsPractice: true), PracticeGame.Of(PracticeDifficulty.Find("easy")!, 7));
        stage.Show(screen);
        stage.WaitFor(() => screen.State.Played is not null);
        stage.Press(Key.Enter, Key.Enter, Key.CursorLeft);
        Assert.Contains("Step 1 of", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.F6);
        Assert.Contains("Letting down costs base", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.F6, Key.F3);
        Assert.Contains("running", stage.Text, StringComparison.Ordinal);
        stage.End();
    }

    /// <summary>A driver without a terminal, with a screen on it.</summary>
    private sealed class Stage : IDisposable
    {
        private readonly IApplication _app;
        private SessionToken? _token;

        public Stage(int width, int height)
        {
            Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
            _app = Application.Create(new VirtualTimeProvider());
            _app.Init(DriverRegistry.Names.ANSI);
            _app.Driver!.SetScreenSize(width, height);
        }

        public string Text
        {
            get
            {
                _app.LayoutAndDraw();
                return _app.Driver!.ToString()!;
            }
        }

        public void Show(TuiScreen screen)
        {
            _token = _app.Begin(screen);
            _app.LayoutAndDraw();
        }

        public void Press(params Key[] keys)
        {
            foreach (var key in keys)
            {
                _app.InjectKey(key);
            }
        }

        public void Type(string text) => Press([.. text.Select(c => new Key(c))]);

        public void WaitFor(Func<bool> happened)
        {
            for (var i = 0; i < 400 && !happened(); i++)
            {
                Thread.Sleep(25);
                _app.TimedEvents!.RunTimers();
            }

            Assert.True(happened());
        }

        public void End() => _app.End(_token!);

        public void Dispose() => _app.Dispose();
    }
}
