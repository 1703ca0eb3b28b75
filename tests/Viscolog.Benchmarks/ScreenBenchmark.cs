using System.Diagnostics;
using System.Globalization;
using System.Text;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tables;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Runs;

namespace Viscolog.Benchmarks;

/// <summary>Times a keystroke, drawn, on the list of runs and on the bench, with so many readings in the log.</summary>
internal static class ScreenBenchmark
{
    private const int RowsARun = 50;
    private const int Strokes = 60;

    public static int Run(string[] args)
    {
        var size = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 100_000;
        var folder = Directory.CreateTempSubdirectory("viscolog-screen-").FullName;
        try
        {
            using var log = BenchLog.Open(new(Path.Combine(folder, "log")), LogUse.Write, TimeProvider.System, null).Made!;
            for (var i = 0; i < size / RowsARun; i++)
            {
                var text = new StringBuilder(FormattableString.Invariant($"# name: run {i}\n# base: GB-{i % 10}\n# base_g: 120\n# thickener: TA\n# target_mpas: 12000\nthickener,added_g,wait_s,viscosity_mpas\n"));
                for (var k = 0; k < RowsARun; k++)
                {
                    text.Append(k is > 0 and < 7 ? "TA,0.6," : ",,")
                        .Append(CultureInfo.InvariantCulture, $"{60 + k},{850 * Math.Pow(1.4, Math.Min(k, 6)):0.0}\n");
                }

                log.Import(
                    ((TableOutcome<RunFile>.Read)RunFileReader.Parse("run", Encoding.UTF8.GetBytes(text.ToString()))).File,
                    CancellationToken.None);
            }

            Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
            using var app = Application.Create(new VirtualTimeProvider());
            app.Init(DriverRegistry.Names.ANSI);
            app.Driver!.SetScreenSize(120, 40);
            var context = new TuiContext(log, TimeProvider.System, new(hasColor: true), IsAscii: false);
            using var runs = RunsScreen.On(context);
            var list = Time(app, runs, Key.CursorDown);
            var search = Time(app, runs, new Key('1'), Key.Backspace);
            using var bench = BenchScreen.On(context, log.Run(1)!);
            var type = Time(app, bench, new Key('1'), Key.Backspace);
            var move = Time(app, bench, Key.CursorUp);
            Console.WriteLine(FormattableString.Invariant($"{size} readings in {size / RowsARun} runs, milliseconds a keystroke drawn at 120 x 40, median and worst of {Strokes}:"));
            Console.WriteLine($"list of runs, move {list}; search {search}; bench, type {type}; bench, choose an entry {move}");
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Time(IApplication app, ScreenView screen, params Key[] keys)
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
