using System.Globalization;
using System.Text;
using System.Text.Json;
using Viscolog.Cli.Calls;
using Viscolog.Tests.Support;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Cli;

/// <summary>
/// Whatever names, notes, arguments and file names hold: no command gives a terminal what moves its cursor, colours it, turns its writing
/// or hides.
/// </summary>
public sealed class HostileTextTests : IDisposable
{
    /// <summary>Directions, marks of order, widths of nothing, tags: all that a material's name may hold.</summary>
    private const string Unseen = "\u202e\u202a\u2066\u2069\u200e\u200f\u061c\ufeff\u200b\u200d\u2060\u00ad\u115f\U000E0041";

    /// <summary>Colour, window title, C1, backspace, bell, delete.</summary>
    private const string Hostile = "no\e[31m\e]0own\a\u009b2J\b\u007f" + Unseen + "ne";

    private const string Product = "no" + Unseen + "ne";

    private static readonly string[] Commands = [.. typeof(CalledCommand).Assembly.GetTypes()
        .Where(t => t is { IsAbstract: false } && t.IsSubclassOf(typeof(CalledCommand)))
        .Select(t => ((CalledCommand)Activator.CreateInstance(t)!).Name).Order(StringComparer.Ordinal)];

    private readonly TemporaryFolder _folder = new();
    private readonly string _log;

    public HostileTextTests()
    {
        _log = _folder.Of("log" + Hostile);
        var imported = Called.In(_log, "import", Run(), Materials(), Oils());
        Assert.True(imported.Code == 0, imported.Error);
        Assert.Equal(0, Called.In(_log, "practice", "play", "read", "end", "--pot", "easy", "--player", Hostile).Code);
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void No_command_gives_a_terminal_what_it_must_not_have()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        string[][] looks = [["--json"], ["--ascii"], ["--json", "--ascii"], ["--help"]];
        foreach (var (i, call) in Calls().Index())
        {
            seen.UnionWith(call.TakeWhile(a => !a.StartsWith('-')));
            Harmless(Called.OnTerminal(_log, call), string.Join(' ', call));
            // Of the gate's sample every fifth call has one more of the looks.
            for (var tries = Sweep.Tries(looks.Length, i % 5 == 0 ? 1 : 0); tries > 0; tries--)
            {
                string[] looked = [.. call, .. looks[((i / 5) + tries - 1) % looks.Length]];
                Harmless(Called.OnTerminal(_log, looked), string.Join(' ', looked));
            }
        }

        Assert.Subset(seen, Commands.ToHashSet(StringComparer.Ordinal));
    }

    [Fact]
    public void No_wrong_call_does_either()
    {
        foreach (var call in WrongCalls())
        {
            var called = Called.OnTerminal(_log, call);
            Assert.NotEqual(0, called.Code);
            Harmless(called, string.Join(' ', call));
        }
    }

    /// <summary>The words are there for a person to see what was in them, and JSON gives a program the very text.</summary>
    [Fact]
    public void What_is_taken_away_is_named_and_JSON_says_the_same()
    {
        var advised = Called.OnTerminal(_log, "advise", "1");
        Assert.Contains("no<U+001B>[31m<U+001B>]0own<U+0007><U+009B>2J", advised.Output, StringComparison.Ordinal);
        var json = Called.OnTerminal(_log, "advise", "1", "--json");
        using var answer = JsonDocument.Parse(json.Output);
        Assert.Equal(Hostile, answer.RootElement.GetProperty("run").GetString());
        Assert.Contains("\\u202e", json.Output, StringComparison.Ordinal);
        Assert.Contains("<U+202E>", Called.OnTerminal(_log, "show", "1").Output, StringComparison.Ordinal);
    }

    /// <summary>Files and pipes get the text itself: what is exported is the run.</summary>
    [Fact]
    public void What_is_written_to_a_file_or_a_pipe_is_exact()
    {
        var file = _folder.Of("out.csv");
        Assert.Equal(0, Called.OnTerminal(_log, "export", "1", "-o", file).Code);
        Assert.Equal(File.ReadAllText(file), Called.In(_log, "export", "1").Output);
        Assert.Contains(Hostile, File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void No_page_of_a_screen_does_either(bool isAscii)
    {
        var page = Page.Of(new(200, 24, isAscii), "page", p =>
        {
            p.Add(Hostile);
            p.Add(p.Fit(Hostile, 150));
        });
        Harmless(new(0, page.Text, ""), "a page");
        Assert.Contains("<U+202E>", page.Text, StringComparison.Ordinal);
    }

    private string[][] Calls() =>
    [
        ["show", "1"], ["runs"], ["export", "1"], ["template", "-o", _folder.Of("t.xlsx"), "--force"],
        ["listen", Hostile],
        ["share"], ["share", "setup", "--bench", Product], ["share", "status"], ["share", "runs"], ["share", "leave"],
        ["share", "join", "postgresql://no@127.0.0.1:9/x?sslmode=disable", "--bench", Product],
        ["share", "join", "postgresql://" + Hostile, "--bench", Hostile],
        ["share", "hand", "1", "--to", Hostile], ["share", "take", Hostile],
        ["practice", "serve", "--reads", Hostile],
        ["listen", Hostile, "--reads", "viscosity_mpas=1"],
        ["listen", "tcp:localhost:9", "--reads", Hostile],
        ["new", "base_g=1", "name=" + Hostile, "--log", _folder.Of("new")], ["add", "1", "note=" + Hostile, "--log", _folder.Of("new")],
        ["void", "1", "1", "--reason", Hostile, "--log", _folder.Of("new")],
        ["help", "advise"],
        ["config"],
        ["completions", "bash"],
        ["methods"],
        ["chemistries"],
        ["shapes"],
        ["convert", "60", "--method", "iso-2431-4"],
        ["advise", "1"],
        ["advise", Run()],
        ["verify"],
        ["drift"],
        ["practice"],
        ["bench", "1"],
        ["report", "1"],
        ["report", Run()],
        ["label", "1"],
        ["label", Run(), "--batch", "--low", "1000", "--high", "90000"],
        ["fit", "1"],
        ["export", "--oils"],
        ["practice", "scores"], ["export", "--materials"], ["export", "1", "-o", _folder.Of(Hostile + ".csv"), "--force"], ["fit", Run()],
        ["report", "1", "--certificate", "--low", "1000", "--high", "90000"], ["report", "1", "--certificate", "--spec", Product],
        ["check", "1", "--low", "1000", "--high", "90000"], ["check", Run(), "--spec", Product], ["batch", "1", "--to", "5kg"],
        ["practice", "replay", "1"], ["practice", "replay", Run()], ["practice", "demo", "--pot", "easy", "--brief"],
        ["practice", "play", "read", "end", "--pot", "easy", "--player", Hostile], ["runs", "--compare", "--target", "9000"],
        ["export", "--all", "-o", _folder.Of("all" + Hostile)], ["import", Run()], ["import", _folder.FullPath],
        ["drift", "--void", "1", "--why", Hostile], ["trend", Trend()], ["trend", Trend(), "--leave-out", Hostile],
        ["trend", "--product", Product], ["flow", Flow()], ["plot", "1", "-o", _folder.Of(Hostile + ".svg"), "--force"],
        ["backup", "--to", _folder.Of("backups" + Hostile)], ["restore", _folder.Of(Hostile)],
    ];

    private string[][] WrongCalls() =>
    [
        [Hostile],
        ["advise", Run(), Hostile],
        ["advise", "--" + Hostile],
        ["advise", Run(), "--target", Hostile],
        ["advise", _folder.Of(Hostile + "x")],
        ["advise", Run(), "--history", _folder.Of(Hostile + "x")], ["advise", "@" + Hostile], ["advise", Hostile], ["advise", Refused()],
        ["import", Refused()],
        ["import", _folder.Of(Hostile + "x")],
        ["fit", Run(), "--at", Hostile],
        ["show", Hostile],
        ["bench", Hostile],
        ["check", Run(), "--spec", Product + "x"],
        ["convert", Hostile],
        ["convert", "5", "--method", Hostile],
        ["convert", "5", "--from", Hostile, "--to", "kg"],
        ["flow", Hostile],
        ["flow", Refused()],
        ["trend", Hostile],
        ["trend", Refused()],
        ["trend", Trend(), "--column", Hostile],
        ["trend", "--product", Hostile + "x"],
        ["plot", Run(), "-o", Hostile],
        ["plot", Run(), "-o", _folder.Of("a.svg"), "--kind", Hostile],
        ["plot", Run(), "-o", _folder.Of(Hostile + "/a.svg")],
        ["report", Run(), "--out", _folder.Of(Hostile + ".doc")],
        ["label", Run(), "--out", _folder.Of(Hostile + ".doc")],
        ["label", Run(), "--sheet", Hostile],
        ["export", Hostile],
        ["template", "-o", _folder.Of(Hostile + ".doc")],
        ["new", Hostile],
        ["new", "base_g=" + Hostile],
        ["add", "1", Hostile],
        ["add", "1", "wait_s=" + Hostile],
        ["add", Hostile, "note=x"],
        ["void", "1", Hostile, "--reason", "x"],
        ["help", Hostile],
        ["config", Hostile],
        ["config", "risk=" + Hostile],
        ["completions", Hostile],
        ["export", "1", "-o", _folder.Of(Hostile + "/x/y.csv")],
        ["backup", "--keep", Hostile], ["backup", "--to", _folder.Of(Hostile + "x/y")], ["restore", Hostile], ["runs", "--since", Hostile],
        ["practice", "play", Hostile],
        ["practice", "play", "read", "--seed", Hostile],
        ["practice", Hostile],
        ["practice", "replay", Hostile],
        ["batch", Run(), "--to", Hostile],
        ["drift", "--method", Hostile, "--read", "5"],
        ["drift", "--date", Hostile],
        ["runs", "--log", Run()],
        ["verify", "--log", _folder.Of(Hostile + "x/y")],
    ];

    private static void Harmless(Called called, string call)
    {
        Assert.True(called.Code != 70, $"{call}: {called.Error}");
        foreach (var rune in (called.Output + called.Error).EnumerateRunes())
        {
            var bad = rune.Value != '\n' && (rune.Value is 0x115f or 0x034f
                || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Format or UnicodeCategory.Control or UnicodeCategory.LineSeparator
                    or UnicodeCategory.ParagraphSeparator);
            Assert.False(bad, string.Create(CultureInfo.InvariantCulture, $"{call} lets U+{rune.Value:X4} through"));
        }
    }

    private string Run() => Write("run" + Hostile + ".csv", $"""
        # name: {Hostile}
        # base: {Hostile}
        # base_g: 120
        # lot: {Hostile}
        # operator: {Hostile}
        # note: {Hostile}
        # product: {Product}
        # thickener: T{Hostile}; trait{Hostile}={Hostile}; range_pct=0.5-4
        # target_mpas: 9000
        # key{Hostile}: {Hostile}
        thickener,added_g,stir_s,wait_s,viscosity_mpas,note,void,"mood{Hostile}"
        ,,0,60,640,{Hostile},,{Hostile}
        T{Hostile},0.90,15,60,1180,"{Hostile} in
        two lines",,
        T{Hostile},0.30,15,60,1980,,,
        ,,,90,2010,,{Hostile},
        T{Hostile},0.60,15,60,4200,,,

        """);

    private string Materials() => Write("materials" + Hostile + ".csv", $"""
        # viscolog-materials: 1
        kind,name,target_mpas,tolerance_pct,note,"odd{Hostile}"
        specification,{Product},9000,15,{Hostile},{Hostile}
        base,{Product},,,{Hostile},

        """);

    private string Oils() => Write("oils" + Hostile + ".csv", $"""
        # viscolog-oils: 1
        date,method,oil,certified_mpas,certified_temp_c,uncertainty_pct,viscosity_mpas,temp_c,note
        2026-09-07,direct,{Hostile},1012,25,0.5,1019,25.1,{Hostile}
        2026-09-08,direct,{Hostile},1012,25,0.5,1022,25.0,

        """);

    private string Trend() => Write("trend" + Hostile + ".csv", $"""
        # name: {Hostile}
        # key{Hostile}: {Hostile}
        batch,value,"odd{Hostile}"
        {Hostile},9020,{Hostile}
        2,9190,
        3,8820,
        4,9140,
        5,99380,
        6,9170,
        7,9660,
        8,8650,

        """);

    private string Flow() => Write("flow" + Hostile + ".csv", $"""
        # name: {Hostile}
        # key{Hostile}: {Hostile}
        shear_rate_1_s,viscosity_pas,"odd{Hostile}"
        1,11.38,{Hostile}
        2,6.669,
        5,3.432
        10,2.191
        20,1.446
        50,0.8486
        100,0.5788

        """);

    private string Refused() => Write(
        "refused" + Hostile + ".csv",
        $"# base_g: 120\nviscosity_mpas,wait_s,shear_rate_1_s,stress_pa,batch\n{Hostile},{Hostile},{Hostile},{Hostile},{Hostile}\n");

    private string Write(string name, string text)
    {
        var path = _folder.Of(name);
        File.WriteAllText(path, text);
        return path;
    }
}
