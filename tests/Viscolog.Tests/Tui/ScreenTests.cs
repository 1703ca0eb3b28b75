using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;
using Viscolog.Core.Pots;
using Viscolog.MaterialFiles;
using Viscolog.Store;
using Viscolog.Tables;
using Viscolog.Tests.Store;
using Viscolog.Tests.Support;
using Viscolog.Tui.Batches;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Papers;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.RunHeaders;
using Viscolog.Tui.Runs;

namespace Viscolog.Tests.Tui;

/// <summary>Screens on a driver without a terminal: keys in, log and picture out.</summary>
public sealed class ScreenTests
{
    [Fact]
    public void Readings_and_doses_are_logged_by_keys_alone()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(
            RunFiles.FileText.Read(
                "# name: keys\n# base: Gable\n# base_g: 120\n# thickener: TA; range_pct=1-5\n"
                + "# target_mpas: 9000\nadded_g,wait_s,viscosity_mpas\n,60,850\n0.6,60,1000\n,120,1010\n"),
            CancellationToken.None);
        using var stage = new Stage(80, 24);
        using var screen = BenchScreen.On(new(log, TimeProvider.System, new(hasColor: true), IsAscii: false), log.Run(1)!);
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
        var contents = log.Run(1)!.File.Contents().ToList();
        Assert.Equal((5, 90.0, "smooth"), (contents.Count, contents[4].Reading!.Wait!.Value.TotalSeconds, contents[4].Note));
        Assert.Contains("saved: 1\u2009200 mPa·s", stage.Text, StringComparison.Ordinal);

        stage.Type("12x");
        stage.Press(Key.Enter);
        Assert.Contains("! read the unit 'x', expected mPa·s", stage.Text, StringComparison.Ordinal);
        Assert.Equal(5, log.Run(1)!.Rows.Length);
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
        using var screen = RunsScreen.On(new(log, TimeProvider.System, new(hasColor: false), IsAscii: true));
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

    /// <summary>The cautions before the first addition stand in a form's text, so that has to be shown.</summary>
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(60, 16)]
    public void A_form_shows_what_it_is_about_and_its_fields(int width, int height)
    {
        using var bench = new Bench();
        using var log = bench.Open();
        TuiContext context = new(log, TimeProvider.System, new(hasColor: true), IsAscii: false);
        var trial = new BenchTrial(RunFiles.FileText.Read(
            "# base: GB-40\n# base_g: 120\n# thickener: TA; chemistry=alkali-swellable; range_pct=1-5\n# target_mpas: 9000\n"
                + "added_g,wait_s,viscosity_mpas\n,60,850\n"));
        trial.Advise();
        log.Import(Bench.File("papers", 2), CancellationToken.None);
        Look(BenchForms.Dose(trial.State));
        Look(BenchForms.Void(trial.State)!);
        Look(BenchForms.Change(trial.State));
        Look(BenchForms.Aim(trial.State));
        Look(BenchForms.Beside(trial.State));
        Look(RunPapers.Form(log.Run(1)!, [], new(2026, 11, 28)));
        Look(LearnForms.Meaning("ST 8420 23.1"));
        Look(RunForm.New([], null));

        void Look<T>(Form<T> form)
            where T : class
        {
            using var stage = new Stage(width, height);
            using var dialog = new FormDialog<T>(form, context);
            stage.Show(dialog);
            var shown = string.Join(' ', stage.Text.Split([' ', '\n', '┃', '│'], StringSplitOptions.RemoveEmptyEntries));
            Assert.Contains(form.About, shown, StringComparison.Ordinal);
            Assert.All(
                height > 16 && form.Fields.Length < 12 ? form.Fields : form.Fields.Where(f => f.IsFirst),
                f => Assert.Contains(f.Label, shown, StringComparison.Ordinal));
            // Where a field is shown, so is all of its hint.
            Assert.All(
                form.Fields.Where(f => f.Hint.Length > 0 && stage.Text.Contains(" " + f.Label + " ", StringComparison.Ordinal)),
                f => Assert.Contains(f.Hint, shown, StringComparison.Ordinal));
            stage.End();
        }
    }

    [Fact]
    public void A_check_is_worked_out_and_another_specification_asked_for()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        BringChecksIn(log);
        using var stage = new Stage(80, 24);
        using var screen = CheckScreen.On(new(log, TimeProvider.System, new(hasColor: true), IsAscii: false), log.Run(1)!);
        stage.Show(screen);
        stage.WaitFor(() => screen.State.Outcome is not null);
        Assert.Contains("ACCEPT", stage.Text, StringComparison.Ordinal);
        Assert.Contains("against Lantern gel", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.CursorDown);
        stage.WaitFor(() => screen.State.Outcome is not null);
        Assert.Contains("against target of the run", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.Esc);
        Assert.False(screen.Quits);
        stage.End();
    }

    [Fact]
    public void The_trend_of_a_product_is_worked_out()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        BringChecksIn(log);
        using var stage = new Stage(120, 40);
        using var screen = TrendScreen.On(new(log, TimeProvider.System, new(hasColor: false), IsAscii: true), "Lantern gel 22");
        stage.Show(screen);
        stage.WaitFor(() => screen.State.Trend is not null);
        Assert.Contains("Lantern gel: batches over time", stage.Text, StringComparison.Ordinal);
        Assert.Contains("limits come from 3 batches", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.F6);
        Assert.Equal(Core.Charting.ChartScale.Linear, screen.State.Scale);
        stage.Press(Key.CursorUp);
        stage.WaitFor(() => screen.State.Trend is not null);
        Assert.Contains("No chart: limits need 3 batches or more", stage.Text, StringComparison.Ordinal);
        stage.End();
    }

    /// <summary>Brings the samples of checks and their specifications in, the accepted one first.</summary>
    private static void BringChecksIn(BenchLog log)
    {
        foreach (var name in new[] { "lantern-gel-21", "lantern-gel-22-short", "lantern-gel-23-low-ph", "harbour-gel-09-over" })
        {
            var file = RunFiles.FileText.Read(File.ReadAllText(Checkout.Sample($"checks/{name}.csv")));
            Assert.IsType<WriteOutcome.Saved>(log.Import(file, CancellationToken.None).Outcome);
        }

        var read = Assert.IsType<TableOutcome<MaterialFile>.Read>(MaterialFileReader.Parse(
            "m",
            File.ReadAllBytes(Checkout.Sample("materials/workshop.csv"))));
        Assert.IsType<WriteOutcome.Saved>(log.State(read.File.Rows).Outcome);
    }

    /// <summary>A driver without a terminal, with a screen on it.</summary>
    internal sealed class Stage : IDisposable
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

        public void Show(IRunnable screen)
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
