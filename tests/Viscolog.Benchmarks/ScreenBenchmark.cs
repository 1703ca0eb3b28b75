using System.Diagnostics;
using System.Globalization;
using System.Text;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tables;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Runs;

namespace Viscolog.Benchmarks;

/// <summary>Times keystrokes, drawn, on the list of runs and on the bench, opening a run, and the advice after a reading.</summary>
internal static class ScreenBenchmark
{
    private const int RowsARun = 50;
    private const int Strokes = 60;

    public static int Run(string[] args)
    {
        var runCount = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2000;
        var folder = Directory.CreateTempSubdirectory("viscolog-screen-").FullName;
        try
        {
            using var log = BenchLog.Open(new(Path.Combine(folder, "log")), LogUse.Write, TimeProvider.System, null).Made!;
            Import(log, "short", 20);
            Import(log, "long", 500);
            for (var i = 2; i < runCount; i++)
            {
                Import(log, FormattableString.Invariant($"run {i}"), RowsARun);
            }

            Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
            using var app = Application.Create(new VirtualTimeProvider());
            app.Init(DriverRegistry.Names.ANSI);
            app.Driver!.SetScreenSize(120, 40);
            var context = new TuiContext(log, TimeProvider.System, new(hasColor: true), IsAscii: false);
            Console.WriteLine(
                $"Milliseconds a keystroke, drawn at 120 x 40, median and worst of {Strokes}; the toolkit alone is one field, "
                    + "and a page of letters:");
            using var bare = new Bare();
            using var filled = new Filled();
            Console.WriteLine(
                $"toolkit alone      type {Time(app, bare, new Key('1'), Key.Backspace)}, "
                    + $"a page of text {Time(app, filled, Key.CursorDown)}");
            using var runs = RunsScreen.On(context);
            Console.WriteLine(
                $"list of {runCount} runs  move {Time(app, runs, Key.CursorDown)}, search {Time(app, runs, new Key('1'), Key.Backspace)}");
            foreach (var (number, entries) in ((int, int)[])[(1, 20), (2, 500)])
            {
                // With the first advice there, and its chart: as a person finds it, but for the first moment.
                using var bench = BenchScreen.On(context, log.Run(number)!);
                var opened = app.Begin(bench)!;
                while (bench.State.Advice is null)
                {
                    Thread.Sleep(1);
                    app.TimedEvents!.RunTimers();
                }

                app.End(opened);
                Console.WriteLine(
                    $"bench, {entries,3} entries  type {Time(app, bench, new Key('1'), Key.Backspace)}, "
                        + $"choose {Time(app, bench, Key.CursorUp)}");
            }

            Console.WriteLine(
                "Milliseconds to open a run (median of 9) and to advise on it (once, two seconds after another advice; "
                    + "and when warm, median of 9):");
            foreach (var (number, entries) in ((int, int)[])[(1, 20), (2, 500)])
            {
                var opened = Median(() => BenchScreen.On(context, log.Run(number)!).Dispose());
                var run = log.Run(number)!.File.Run;
                void Advise() => BenchAdvisor.Of(new(run, Percentage.FromPercent(4.5), []));
                Advise();
                Thread.Sleep(2000);
                var second = Stopwatch.GetTimestamp();
                Advise();
                var early = Stopwatch.GetElapsedTime(second).TotalMilliseconds;
                for (var i = 0; i < 40; i++)
                {
                    Advise();
                }

                Console.WriteLine(FormattableString.Invariant(
                    $"{entries,3} entries  open {opened:0}, advise {early:0} and {Median(Advise):0}"));
            }

            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>A run of so many readings, in steps of ten.</summary>
    private static void Import(BenchLog log, string name, int readings)
    {
        var text = new StringBuilder($"# name: {name}\n# base: Gable\n# base_g: 120\n# thickener: TA\n# target_mpas: 12000\n"
            + "thickener,added_g,wait_s,viscosity_mpas\n");
        for (var k = 0; k < readings; k++)
        {
            var dose = 20.0 * k / readings;
            text.Append(k > 0 && k % 10 == 0 ? string.Create(CultureInfo.InvariantCulture, $"TA,{36.0 / readings:0.000},") : ",,")
                .Append(
                    CultureInfo.InvariantCulture,
                    $"{60 * ((k % 10) + 1)},{850 * Math.Exp(0.1 * dose) * (1 + (0.01 * ((k * 7 % 5) - 2))):0.0}\n");
        }

        log.Import(
            ((TableOutcome<RunFile>.Read)RunFileReader.Parse("run", Encoding.UTF8.GetBytes(text.ToString()))).File,
            CancellationToken.None);
    }

    private static double Median(Action act)
    {
        var times = new double[9];
        act();
        for (var i = 0; i < times.Length; i++)
        {
            var start = Stopwatch.GetTimestamp();
            act();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[times.Length / 2];
    }

    /// <summary>What the toolkit alone takes: one field in an empty window.</summary>
    private sealed class Bare : Runnable
    {
        private readonly TextField _field = new() { X = 1, Y = 1, Width = 20 };

        public Bare() => Add(_field);

        protected override void Dispose(bool disposing)
        {
            _field.Dispose();
            base.Dispose(disposing);
        }
    }

    /// <summary>What the toolkit alone takes to draw a page.</summary>
    private sealed class Filled : Runnable
    {
        private int _drawn;

        protected override bool OnKeyDown(Key key)
        {
            SetNeedsDraw();
            return true;
        }

        protected override bool OnDrawingContent(DrawContext? context)
        {
            var line = new string((char)('a' + (_drawn++ % 26)), Viewport.Width);
            for (var row = 0; row < Viewport.Height; row++)
            {
                Move(0, row);
                AddStr(line);
            }

            return true;
        }
    }

    private static string Time(IApplication app, IRunnable screen, params Key[] keys)
    {
        var token = app.Begin(screen)!;
        app.LayoutAndDraw();
        var times = new double[Strokes];
        for (var i = 0; i < Strokes; i++)
        {
            var start = Stopwatch.GetTimestamp();
            app.InjectKey(new(keys[i % keys.Length]));
            app.LayoutAndDraw();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        app.End(token);
        Array.Sort(times);
        return FormattableString.Invariant($"{times[Strokes / 2]:0.0} and {times[^1]:0.0}");
    }
}
