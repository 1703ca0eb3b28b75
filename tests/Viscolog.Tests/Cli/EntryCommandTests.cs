using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>Logging without a screen.</summary>
public sealed class EntryCommandTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 15, 0, TimeSpan.FromHours(1));

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_run_logged_word_by_word_is_the_run_of_a_file()
    {
        Done("new", "name=Pot 1", "base=Ledge", "base_g=120", "thickener=TA; range_pct=1-5", "target_mpas=9000");
        Done("add", "1", "wait_s=60", "viscosity_mpas=850", "temp_c=23", "time=2026-03-02T09:00:00+01:00");
        Done("add", "1", "added_pct=0.5", "stir_s=10", "wait_s=30", "viscosity_pas=1.42");
        Done("add", "1", "added_g=60", "note=a slip of the scale");
        Done("void", "1", "3", "--reason", "poured into the other pot");
        var exported = Called.In(_folder.Of("log"), "export", "1");
        Assert.Equal(
            """
            # viscolog-run: 1
            # run_id: ID
            # name: Pot 1
            # base: Ledge
            # base_g: 120
            # thickener: TA; range_pct=1-5
            # target_mpas: 9000
            time,thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,note,void
            2026-03-02T09:00:00+01:00,,,,60,850,23,,
            2026-03-02T09:15:00+01:00,TA,0.6,10,30,1420,,,
            2026-03-02T09:15:00+01:00,TA,60,,,,,a slip of the scale,poured into the other pot

            """.ReplaceLineEndings("\n"),
            System.Text.RegularExpressions.Regex.Replace(
                exported.Output,
                "run_id: [0-9a-f-]+",
                "run_id: ID",
                System.Text.RegularExpressions.RegexOptions.None,
                TimeSpan.FromSeconds(1)));
    }

    [Theory]
    [InlineData(2, "read 'visc=3', expected column=value", "add", "1", "visc=3")]
    [InlineData(2, "did you mean wait_s?", "add", "1", "wiat_s=3")]
    [InlineData(2, "viscosity_mpas: read '3,5', expected a number in mPa·s", "add", "1", "viscosity_mpas=3,5")]
    [InlineData(2, "wait_s: read '5', expected 60 s or more", "add", "1", "wait_s=5", "viscosity_mpas=900")]
    [InlineData(2, "wait_s: given twice", "add", "1", "wait_s=5", "wait_s=6")]
    [InlineData(2, "read a row in which nothing happens", "add", "1", "note=")]
    [InlineData(2, "the log has no run 2", "add", "2", "note=x")]
    [InlineData(2, "run 1 has no row 9", "void", "1", "9", "--reason", "x")]
    [InlineData(1, "Option '--reason' is required", "void", "1", "1")]
    [InlineData(1, "give --reason TEXT", "void", "1", "1", "--reason", " ")]
    [InlineData(2, "no base_g", "new", "name=x")]
    [InlineData(1, "expected key=value", "new", "name")]
    public void What_makes_no_sense_is_refused_and_nothing_is_logged(int code, string said, params string[] args)
    {
        Done("new", "base_g=120", "thickener=TA");
        Done("add", "1", "wait_s=60", "viscosity_mpas=850");
        var called = Called.In(_folder.Of("log"), args);
        Assert.Equal((code, ""), (called.Code, called.Output));
        Assert.Contains(said, called.Error, StringComparison.Ordinal);
        Assert.Contains("\"entries\": 1,", Called.In(_folder.Of("log"), "runs", "--json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_void_row_is_not_made_void_again()
    {
        Done("new", "base_g=120");
        Done("add", "1", "note=x");
        Done("void", "1", "1", "--reason", "typo");
        Assert.Contains(
            "row 1 is void already: typo",
            Called.In(_folder.Of("log"), "void", "1", "1", "--reason", "typo").Error,
            StringComparison.Ordinal);
    }

    private void Done(params string[] args)
    {
        var called = Called.In(_folder.Of("log"), new StoppedClock(Now), args);
        Assert.True(called.Code == 0, called.Error);
    }
}
