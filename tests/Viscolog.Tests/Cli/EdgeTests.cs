using System.Globalization;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>Runs without rows, logs without anything, clocks far off, rows without end: an answer or a reason, never a fault.</summary>
public sealed class EdgeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("# base_g: 100\n# thickener: T\n# target_mpas: 5000\nthickener,added_g,wait_s,viscosity_mpas\n")]
    [InlineData("# base_g: 100\nviscosity_mpas\n")]
    [InlineData("# base_g: 100\n# thickener: T\n# thickener: U\n# target_mpas: 5000\n# target_string_mm: 20-40\nnote,thickener\n")]
    public void A_run_without_rows_is_told_of_or_refused(string text)
    {
        var file = Write("none.csv", text);
        var log = _folder.Of("log");
        Assert.Equal(0, Called.In(log, "import", file).Code);
        foreach (var run in new[] { file, "1" })
        {
            Assert.Equal(0, Called.In(log, "report", run).Code);
            Assert.Contains("nothing was logged", Called.In(log, "report", run).Output, StringComparison.Ordinal);
            Assert.Equal(0, Called.In(log, "report", run, "--out", _folder.Of("r.html"), "--force").Code);
            Unfailing(log, "report", run, "--certificate", "--low", "1000", "--high", "2000");
            Unfailing(log, "advise", run);
            Unfailing(log, "fit", run);
            Unfailing(log, "check", run, "--low", "1000", "--high", "2000");
            Unfailing(log, "batch", run, "--to", "5kg");
            Unfailing(log, "plot", run, "-o", _folder.Of("p.svg"));
            Unfailing(log, "practice", "replay", run);
        }

        Assert.Equal(0, Called.In(log, "show", "1").Code);
        Assert.Equal(0, Called.In(log, "show", "1", "--json").Code);
        Assert.Equal(0, Called.In(log, "export", "1").Code);
        Unfailing(log, "runs", "--compare", "--target", "5000");
    }

    [Theory]
    [InlineData("--oils")]
    [InlineData("--materials")]
    public void A_log_without_them_gives_a_file_that_reads_as_none(string what)
    {
        var log = _folder.Of("log");
        Assert.Equal(0, Called.In(log, "import", Checkout.Sample("lantern-gel-06.csv")).Code);
        var exported = Called.In(log, "export", what);
        Assert.True(exported.Code == 0, exported.Error);
        var again = Called.In(log, "import", Write("none.csv", exported.Output));
        Assert.True(again.Code == 0, again.Error);
    }

    [Theory]
    [InlineData("0001-01-01T00:00:00Z")]
    [InlineData("0001-01-03T00:00:00Z")]
    [InlineData("1066-10-14T09:00:00Z")]
    [InlineData("1969-12-31T23:59:59Z")]
    [InlineData("9999-12-30T00:00:00Z")]
    [InlineData("9999-12-31T23:59:59.999Z")]
    public void A_clock_thousands_of_years_off_changes_nothing_but_dates(string time)
    {
        var clock = new StoppedClock(DateTimeOffset.Parse(time, CultureInfo.InvariantCulture));
        var log = _folder.Of("log");
        string[][] calls =
        [
            [
                "import",
                Checkout.Sample("lantern-gel-06.csv"),
                Checkout.Sample("materials/workshop.csv"),
                Checkout.Sample("oils/workshop-oils.csv"),
            ],
            ["runs"], ["show", "1"], ["advise", "1"], ["check", "1", "--low", "1000", "--high", "90000"], ["drift"],
            ["drift", "--method", "direct", "--oil", "N", "--certified", "100", "--certified-temp", "23", "--read", "101", "--temp", "23"],
            ["report", "1"], ["batch", "1", "--to", "5kg"], ["backup"], ["verify"], ["trend", "--product", "Lantern gel"],
            ["practice", "play", "read", "end", "--pot", "easy", "--player", "A"], ["practice", "scores"],
        ];
        foreach (var call in calls)
        {
            var called = Called.In(log, clock, call);
            Assert.True(called.Code is 0 or 2 or 3 or 5, $"{string.Join(' ', call)}: {called.Error}");
        }

        Assert.Equal(0, Called.In(log, clock, "restore", Directory.GetFiles(Path.Combine(log, "backups"))[0]).Code);
        Assert.Equal(0, Called.In(log, "show", "1").Code);
    }

    /// <summary>What the log has no room for is refused where it stands.</summary>
    [Theory]
    [InlineData("# base_g: 100\nviscosity_mpas,note\n900,@\n", "line 3, column note")]
    [InlineData("# base_g: 100\nviscosity_mpas,mood\n900,@\n", "line 3, column mood")]
    [InlineData("# base_g: 100\nviscosity_mpas,note\n800,\n900,\"@\n\"\n", "line 4, column note")]
    [InlineData("# base_g: 100\n# note: @\nviscosity_mpas\n900\n", "line 2: read")]
    [InlineData("# base_g: 100\n# mood: @\nviscosity_mpas\n900\n", "line 2: read")]
    [InlineData("# base_g: 100\nviscosity_mpas,@\n900,\n", "line 2, column ")]
    [InlineData("# viscolog-materials: 1\nkind,name,note\nbase,B,@\n", "line 3, column note")]
    [
        InlineData(
            "# viscolog-oils: 1\ndate,method,oil,certified_mpas,certified_temp_c,viscosity_mpas,temp_c,note\n"
                + "2026-09-07,direct,N,1012,25,1019,25.1,@\n",
            "line 3, column note"),
    ]
    public void A_row_or_header_without_end_is_named(string text, string place)
    {
        string[] fillings = [new('x', 1 << 20), new('\u0001', 1 << 18), string.Concat(Enumerable.Repeat("雨", 1 << 19))];
        foreach (var filling in fillings)
        {
            var file = Write("long.csv", text.Replace("@", filling, StringComparison.Ordinal));
            var called = Called.In(_folder.Of("log"), "import", file);
            Assert.True(called.Code == 2, called.Error[..Math.Min(200, called.Error.Length)]);
            var refusal = called.Error.TrimEnd().Split('\n')[^1];
            Assert.Contains(place, refusal, StringComparison.Ordinal);
            Assert.InRange(called.Error.Length, 1, 3000);
        }
    }

    /// <summary>What is read is logged: nothing between the two bounds is refused later, by the log.</summary>
    [Theory]
    [InlineData("# base_g: 100\nviscosity_mpas,note,mood\n900,@,@\n")]
    [InlineData("# base_g: 100\n# note: @\n# mood: @\nviscosity_mpas\n900\n")]
    [InlineData("# viscolog-materials: 1\nkind,name,note,mood\nbase,B,@,@\n")]
    public void What_the_reader_takes_the_log_takes(string text)
    {
        foreach (var length in new[] { 400_000, 520_000, 522_000, 524_000, 526_000 })
        {
            var called = Called.In(
                _folder.Of("log"), "import", Write("long.csv", text.Replace("@", new('x', length), StringComparison.Ordinal)));
            Assert.True(called.Code is 0 or 2 or 3 or 5, called.Error[..Math.Min(200, called.Error.Length)]);
        }
    }

    private static void Unfailing(string log, params string[] call)
    {
        var called = Called.In(log, call);
        Assert.True(called.Code is 0 or 2 or 3 or 5, $"{string.Join(' ', call)}: {called.Code} {called.Error}");
    }

    private string Write(string name, string text)
    {
        var path = _folder.Of(name);
        File.WriteAllText(path, text);
        return path;
    }
}
