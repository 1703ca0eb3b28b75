using System.Text.Json;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The commands on the log, as a script calls them.</summary>
public sealed class LogCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Log => _folder.Of("log");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void An_import_says_what_it_added_and_a_second_one_that_all_was_there()
    {
        var first = Json("import", Checkout.Sample("lantern-gel-06.csv"), Checkout.Sample("lantern-gel-07.csv"));
        Assert.Equal(
            ("viscolog.import/1", 2, 2, 13, 0),
            (
                first.GetProperty("schema").GetString(),
                Number(first, "files"),
                Number(first, "runs"),
                Number(first, "entries"),
                Number(first, "already")));
        var second = Json("import", Checkout.Sample("lantern-gel-06.csv"), Checkout.Sample("lantern-gel-07.csv"));
        Assert.Equal(
            (2, 0, 0, 13), (Number(second, "files"), Number(second, "runs"), Number(second, "entries"), Number(second, "already")));
    }

    [Fact]
    public void A_file_that_contradicts_the_log_is_refused_as_input()
    {
        var text = "# name: glaze\n# base_g: 100\nwait_s,viscosity_mpas\n60,800\n90,900\n";
        File.WriteAllText(_folder.Of("run.csv"), text);
        Assert.Equal(0, Call("import", _folder.Of("run.csv")).Code);
        File.WriteAllText(_folder.Of("run.csv"), text.Replace(",900", ",950", StringComparison.Ordinal));
        var called = Call("import", _folder.Of("run.csv"));
        Assert.Equal(2, called.Code);
        Assert.StartsWith($"{_folder.Of("run.csv")}: run 1 of the log differs: ", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Runs_lists_what_scripts_rely_on()
    {
        Call("import", Checkout.Sample("lantern-gel-06.csv"));
        var root = Json("runs");
        Assert.Equal("viscolog.runs/1", root.GetProperty("schema").GetString());
        var run = Assert.Single(root.GetProperty("runs").EnumerateArray());
        Assert.Equal(
            "base entries id last name number readings thickeners voided",
            string.Join(' ', run.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal)));
        Assert.Equal(
            ("Lantern gel 06", "Ledge", "Sail", 7, 7),
            (
                run.GetProperty("name").GetString(),
                run.GetProperty("base").GetString(),
                run.GetProperty("thickeners")[0].GetString(),
                Number(run, "entries"),
                Number(run, "readings")));
        Assert.True(Guid.TryParse(run.GetProperty("id").GetString(), out _));
        Assert.True(DateTimeOffset.TryParse(run.GetProperty("last").GetString(), System.Globalization.CultureInfo.InvariantCulture, out _));
    }

    [Theory]
    [InlineData(7)]
    [InlineData(3, "--base", "LEDGE")]
    [InlineData(1, "--thickener", "Clew")]
    [InlineData(2, "--text", "DUSK")]
    [InlineData(0, "--until", "2020-01-01")]
    [InlineData(7, "--since", "2020-01-01")]
    [InlineData(1, "--text", "gel 07", "--base", "Ledge")]
    public void Runs_are_filtered(int count, params string[] filter)
    {
        Call("import", Path.Combine(Checkout.Root, "sample-runs"));
        Assert.Equal(count, Json(["runs", .. filter]).GetProperty("runs").GetArrayLength());
    }

    [Fact]
    public void A_logged_run_gets_the_advice_that_its_file_gets()
    {
        Call("import", Checkout.Sample("lantern-gel-07.csv"));
        Assert.Equal(Called.With("advise", Checkout.Sample("lantern-gel-07.csv")).Output, Call("advise", "1").Output);
        Assert.Equal(
            Called.With("fit", Checkout.Sample("lantern-gel-07.csv")).Output,
            Call("fit", Json("runs").GetProperty("runs")[0].GetProperty("id").GetString()!).Output);
        Assert.Equal(0, Call("plot", "1", "-o", _folder.Of("a.svg")).Code);
    }

    [Fact]
    public void The_logs_earlier_runs_are_the_history_and_the_run_itself_is_none()
    {
        Call("import", Checkout.Sample("lantern-gel-06.csv"));
        var expected = Called.With(
            "advise",
            Checkout.Sample("lantern-gel-07.csv"),
            "--history",
            Checkout.Sample("lantern-gel-06.csv")).Output;
        Assert.NotEqual(Called.With("advise", Checkout.Sample("lantern-gel-07.csv")).Output, expected, StringComparer.Ordinal);
        Assert.Equal(expected, Call("advise", Checkout.Sample("lantern-gel-07.csv")).Output);
        Call("import", Checkout.Sample("lantern-gel-07.csv"));
        Assert.Equal(expected, Call("advise", Checkout.Sample("lantern-gel-07.csv")).Output);
        Assert.Equal(expected, Call("advise", "2").Output);
        Assert.Equal(Called.With("advise", Checkout.Sample("lantern-gel-06.csv")).Output, Call("advise", "1").Output);
    }

    [Fact]
    public void Without_a_log_a_file_is_advised_with_a_warning_and_no_log_is_made()
    {
        var called = Call("advise", Checkout.Sample("lantern-gel-07.csv"));
        Assert.Equal((0, Called.With("advise", Checkout.Sample("lantern-gel-07.csv")).Output), (called.Code, called.Output));
        Assert.Equal("warning: going on without earlier runs: there is no log yet ('viscolog import FILE' starts one)\n", called.Error);
        Assert.Equal("", Call("advise", Checkout.Sample("lantern-gel-07.csv"), "--quiet").Error);
        // Who names no log and has begun none is not in want of one.
        Assert.Equal("", Called.Unnamed(_folder.Of("data"), "advise", Checkout.Sample("lantern-gel-07.csv")).Error);
        var json = Json("advise", Checkout.Sample("lantern-gel-07.csv"));
        Assert.StartsWith("going on without earlier runs", json.GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
        Assert.Empty(_folder.Names);
    }

    [Theory]
    [InlineData("runs")]
    [InlineData("show", "1")]
    [InlineData("export", "1")]
    [InlineData("advise", "1")]
    [InlineData("backup")]
    [InlineData("verify")]
    public void A_command_on_a_log_that_is_not_there_ends_with_4_and_makes_none(params string[] args)
    {
        var called = Call(args);
        Assert.Equal(
            (4, "", $"there is no log in {Log}; 'viscolog import FILE' starts one, --log names another folder\n"),
            (called.Code, called.Output, called.Error));
        Assert.Empty(_folder.Names);
    }

    [Theory]
    [InlineData("show", "9")]
    [InlineData("advise", "9")]
    [InlineData("export", "9")]
    [InlineData("plot", "9", "-o", "nine.svg")]
    public void A_run_that_the_log_has_not_is_refused(params string[] args)
    {
        Call("import", Checkout.Sample("lantern-gel-06.csv"));
        var called = Call(args);
        Assert.Equal((2, "", "the log has no run 9; 'viscolog runs' lists what it has\n"), (called.Code, called.Output, called.Error));
    }

    [Fact]
    public void One_bad_file_among_good_ones_is_refused_whole_and_the_others_are_imported()
    {
        var bad = _folder.Of("bad.csv");
        File.WriteAllText(bad, "# base_g: 100\n# thickener: TA\nadded_g,viscosity_mpas\n1,850\n1,x\n");
        var called = Call("import", Checkout.Sample("lantern-gel-06.csv"), bad, Checkout.Sample("lantern-gel-07.csv"));
        Assert.Equal(2, called.Code);
        Assert.StartsWith($"{bad}, line 5, column viscosity_mpas: read 'x'", called.Error, StringComparison.Ordinal);
        Assert.Equal(2, Json("runs").GetProperty("runs").GetArrayLength());
    }

    [Fact]
    public void An_export_imports_elsewhere_as_the_same_and_comes_back_as_nothing_new()
    {
        Call("import", Path.Combine(Checkout.Root, "sample-runs"));
        var runs = _folder.Of("runs");
        Assert.Equal(7, Json("export", "--all", "-o", runs).GetProperty("written").GetArrayLength());
        Assert.Equal(0, Call("export", "--all", "-o", runs).Code);
        var elsewhere = _folder.Of("elsewhere");
        Assert.Equal("7 files: 7 new runs, 38 new entries; 0 already there\n", Called.In(elsewhere, "import", runs).Output);
        Assert.Equal("7 files: 0 new runs, 0 new entries; 38 already there\n", Called.In(elsewhere, "import", runs).Output);
        Assert.Equal(0, Number(Json("import", runs), "entries"));
        var one = _folder.Of("one.csv");
        Call("export", "1", "-o", one);
        Assert.Equal(Call("export", "1").Output, File.ReadAllText(one));
        File.WriteAllText(one, "mine");
        var refused = Call("export", "1", "-o", one);
        Assert.Equal((2, $"{one}: already exists with different content; choose another name, or overwrite it with "
            + $"--force\n"), (refused.Code, refused.Error));
        Assert.Equal("mine", File.ReadAllText(one));
        Assert.Equal(0, Call("export", "1", "-o", one, "--force").Code);
    }

    [Fact]
    public void Texts_that_a_spreadsheet_takes_for_formulas_are_marked_only_when_asked()
    {
        var file = _folder.Of("formulas.csv");
        File.WriteAllText(
            file, "# name: glaze, =1+1\n# base_g: 100\n# thickener: TA\nadded_g,viscosity_mpas,note\n1,850,=HYPERLINK(0)\n1,900,@sum\n");
        Call("import", file);
        Assert.Contains("\nTA,1,,,850,=HYPERLINK(0)\n", Call("export", "1").Output, StringComparison.Ordinal);
        var safe = Call("export", "1", "--spreadsheet-safe").Output;
        Assert.Contains("# name: glaze, '=1+1\n", safe, StringComparison.Ordinal);
        Assert.Contains("'=HYPERLINK(0)", safe, StringComparison.Ordinal);
        Assert.Contains("'@sum", safe, StringComparison.Ordinal);
    }

    [Fact]
    public void A_backup_is_restored_and_what_was_there_is_set_aside()
    {
        Call("import", Checkout.Sample("lantern-gel-06.csv"));
        var backup = Json("backup").GetProperty("path").GetString()!;
        Call("import", Checkout.Sample("lantern-gel-07.csv"));
        var restored = Json("restore", backup);
        Assert.Equal(1, Json("runs").GetProperty("runs").GetArrayLength());
        var aside = restored.GetProperty("aside").GetString()!;
        Assert.True(File.Exists(Path.Combine(aside, "readings.journal")));
        Assert.Equal(2, JsonDocument.Parse(Called.In(aside, "runs", "--json").Output).RootElement.GetProperty("runs").GetArrayLength());
    }

    [Fact]
    public void So_many_backups_are_kept_as_were_asked_for()
    {
        Call("import", Checkout.Sample("lantern-gel-06.csv"));
        for (var i = 0; i < 4; i++)
        {
            Call("backup", "--keep", "2", "--to", _folder.Of("backups"));
        }

        Assert.Equal(2, Directory.GetFiles(_folder.Of("backups")).Length);
        Assert.Equal(1, Call("backup", "--keep", "0").Code);
    }

    [Fact]
    public void A_file_that_is_no_backup_is_not_restored_and_the_log_stays()
    {
        Call("import", Checkout.Sample("lantern-gel-06.csv"));
        var called = Call("restore", Checkout.Sample("lantern-gel-06.csv"));
        Assert.Equal(4, called.Code);
        Assert.Contains("is not the journal of a log", called.Error, StringComparison.Ordinal);
        Assert.Equal(1, Json("runs").GetProperty("runs").GetArrayLength());
    }

    [Fact]
    public void Verify_says_that_all_is_well()
    {
        Call("import", Checkout.Sample("lantern-gel-06.csv"));
        Assert.Equal(
            "journal: 11 lines, every checksum holds: 1 run, 7 entries\nquery copy: the same as the journal, every document\n",
            Call("verify").Output);
    }

    [Fact]
    public void Show_tells_doses_readings_and_voids()
    {
        var file = _folder.Of("voids.csv");
        File.WriteAllText(
            file,
            "# name: glaze 4\n# base: Gable\n# base_g: 100\n# thickener: TA\nadded_g,stir_s,wait_s,viscosity_mpas,note,void,replaces\n"
                + ",,60,850,base as received,,\n1,10,30,9000,,a digit too many,\n1,10,30,900,,,above\n");
        Call("import", file);
        ExpectedFile.Check("cli/show-voids.txt", Without(Call("show", "1").Output));
        var entries = Json("show", "1").GetProperty("entries").EnumerateArray().ToList();
        Assert.Equal(
            ("a digit too many", 0.0),
            (
                entries[1].GetProperty("is").GetProperty("void").GetString(),
                entries[1].GetProperty("doses_pct").GetProperty("TA").GetDouble()));
        Assert.Equal(1, entries[2].GetProperty("doses_pct").GetProperty("TA").GetDouble());
    }

    private static string Without(string output)
        => string.Join('\n', output.Split('\n').Where(l => !l.Contains("run_id", StringComparison.Ordinal)));

    private static int Number(JsonElement element, string name) => element.GetProperty(name).GetInt32();

    private Called Call(params string[] args) => Called.In(Log, args);

    private JsonElement Json(params string[] args)
    {
        var called = Call([.. args, "--json"]);
        Assert.Equal(0, called.Code);
        using var document = JsonDocument.Parse(called.Output);
        return document.RootElement.Clone();
    }
}
