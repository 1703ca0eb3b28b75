using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Viscolog.OilFiles;
using Viscolog.Store;
using Viscolog.Tables;
using Viscolog.Tests.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.OilFiles;

/// <summary>Readings of certified oils: files, the log, what they say of a method.</summary>
public class OilFileTests
{
    private const string Head = "# viscolog-oils: 1\n"
        + "date,method,oil,certified_mpas,certified_temp_c,uncertainty_pct,viscosity_mpas,cup_s,ku,torque_pct,rpm,temp_c,density_g_ml,"
        + "factor_mpas_per_pct,shelf,void\n";

    private static readonly Gen<string> Line =
        from method in OneOf(
            "direct,oil A,1000,25,0.5,{0},,,,,25,,",
            "krebs,oil B,620,25,,,,{1},,,24.5,,",
            "iso-2431-4,oil C,90,23,0.4,,{2},,,,23,1.05,",
            "rotational,oil D,1000,25,,,,,{3},20,25.1,,20")
        from value in Gen.Int[0, 9]
        from tail in OneOf(",", "left,", "\"a, b\",", ",typed wrong")
        select "2026-03-02," + string.Format(
            System.Globalization.CultureInfo.InvariantCulture,
            method,
            980 + value,
            72 + (0.1 * value),
            60 + value,
            45 + value) + "," + tail;

    private static readonly Gen<string> Text = Line.Array[1, 12].Select(lines => Head + string.Join('\n', lines) + "\n");

    [Fact]
    public void What_is_written_reads_back_the_same()
        => Text.Sample(text =>
        {
            Enter();
            var rows = Read(text);
            Assert.Equal(rows.Select(Whole), Read(Write(rows)).Select(Whole), StringComparer.Ordinal);
            Assert.Equal(Write(rows), Write(Read(Write(rows))));
            Assert.True(OilFileReader.Key.Begins(Encoding.UTF8.GetBytes(Write(rows))));
        });

    [Fact]
    public void Any_change_of_a_file_is_read_or_refused_with_one_line()
        => Gen.Select(Text, Gen.Int[0, int.MaxValue], Gen.Char["09.,;\"#:-e\n\r=a \0"], Gen.Int[0, 2]).Sample((text, at, c, how) =>
        {
            Enter();
            var i = at % text.Length;
            var changed = how switch { 0 => text.Remove(i, 1), 1 => text.Insert(i, c.ToString()), _ => text[..i] };
            if (OilFileReader.Parse("oils.csv", Encoding.UTF8.GetBytes(changed)) is TableOutcome<OilFile>.Refused refused)
            {
                Assert.StartsWith("oils.csv", refused.Refusal.Text, StringComparison.Ordinal);
                Assert.DoesNotContain('\n', refused.Refusal.Text);
            }
        });

    [Theory]
    [InlineData("2026-3-2,direct,oil,1000,25,,1000,,,,,25,,,,", "column date: read '2026-3-2', expected a day such as 2026-03-02")]
    [
        InlineData(
            "2026-03-02,slump,oil,1000,25,,1000,,,,,25,,,,",
            "column method: read 'slump', expected a method that a certified oil can check"),
    ]
    [InlineData("2026-03-02,cup,oil,1000,25,,1000,,,,,25,,,,", "column method: read 'cup', expected a method: direct")]
    [InlineData("2026-03-02,direct,,1000,25,,1000,,,,,25,,,,", "column oil: read nothing, expected the oil's name")]
    [InlineData("2026-03-02,direct,oil,,25,,1000,,,,,25,,,,", "column certified_mpas: read nothing, expected a number in mPa·s")]
    [InlineData("2026-03-02,direct,oil,1000,25,,1000,,,,,,,,,", "column temp_c: read nothing, expected a number in °C")]
    [
        InlineData(
            "2026-03-02,krebs,oil,1000,25,,1000,,,,,25,,,,",
            "column viscosity_mpas: read '1000', expected one reading, of what the method krebs shows: ku"),
    ]
    [InlineData("2026-03-02,rotational,oil,1000,25,,,,,40,,25,,20,,", "column rpm: read nothing, expected rpm with torque_pct")]
    [InlineData("2026-03-02,iso-2431-4,oil,100,25,,,60,,,,25,,,,", "density")]
    [InlineData("2026-03-02,iso-2431-4,oil,100,25,,,10,,,,25,1,,,", "30 to 100 s")]
    [InlineData("2026-03-02,direct,oil,1000,25,,x,,,,,25,,,,", "column viscosity_mpas: read 'x', expected a number in mPa·s")]
    public void Bad_rows_are_refused_with_what_is_expected(string row, string said)
    {
        Enter();
        var refused = Assert.IsType<TableOutcome<OilFile>.Refused>(
            OilFileReader.Parse("oils.csv", Encoding.UTF8.GetBytes(Head + row + "\n")));
        Assert.StartsWith("oils.csv, line 3", refused.Refusal.Text, StringComparison.Ordinal);
        Assert.Contains(said, refused.Refusal.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_log_takes_each_reading_once_and_makes_void_what_a_file_says_is_void()
    {
        Enter();
        using var bench = new Bench();
        using var log = bench.Open();
        const string row = "2026-03-02,direct,oil,1000,25,0.5,1010,,,,,25,,,,";
        Assert.Equal((2, 0, 0), Merged(log, row, row));
        Assert.Equal((0, 0, 2), Merged(log, row, row));
        Assert.Equal((1, 0, 2), Merged(log, row, row, row));
        Assert.Equal((0, 1, 2), Merged(log, row, row + "misread"));
        Assert.Equal((0, 0, 2), Merged(log, row, row + "misread"));
        Assert.Equal((0, 0, 3), Merged(log, row, row, row));
        Assert.Single(log.Oils(), o => o.Row.Void == "misread");
        Assert.Equal(2, BenchKnowledge.Of(log).Drifts().Single().Readings);
        Assert.IsType<WriteOutcome.Saved>(log.VoidOil(1, "again"));
        Assert.IsType<WriteOutcome.NotSaved>(log.VoidOil(1, "again"));
        Assert.IsType<WriteOutcome.NotSaved>(log.VoidOil(9, "none"));
    }

    [Fact]
    public void What_was_logged_is_there_after_closing_checking_and_a_lost_journal()
    {
        Enter();
        using var bench = new Bench();
        string written;
        using (var log = bench.Open())
        {
            log.Import(Bench.File("glaze", 3), CancellationToken.None);
            Merged(log, "2026-03-02,direct,oil,1000,25,0.5,1010,,,,,25,,,left,", "2026-03-02,krebs,oil,620,25,,,,75,,,25,,,,typed wrong");
            written = Write([.. log.Oils().Select(o => o.Row)]);
        }

        using (var log = bench.Open())
        {
            Assert.Equal(written, Write([.. log.Oils().Select(o => o.Row)]));
            Assert.Null(LogCheck.Of(log, null).Difference);
        }

        var journal = File.ReadAllBytes(bench.Place.Journal);
        journal[^20] ^= 1;
        File.WriteAllBytes(bench.Place.Journal, journal);
        Assert.Equal(0, Called.In(bench.Place.Folder, "restore", "--from-copy").Code);
        using (var log = bench.Open())
        {
            Assert.Equal(written, Write([.. log.Oils().Select(o => o.Row)]));
        }
    }

    [Fact]
    public void A_method_shows_its_bias_and_when_it_was_last_checked()
    {
        var log = Directory.CreateTempSubdirectory("viscolog-").FullName;
        try
        {
            var folder = Path.Combine(log, "log");
            string[] reading =
            [
                "--method",
                "direct",
                "--oil",
                "oil A",
                "--certified",
                "1000",
                "--certified-temp",
                "25",
                "--temp",
                "25",
                "--uncertainty",
                "0.4",
                "--log",
                folder,
            ];
            Assert.Equal(4, Called.In(log, "drift", "--log", folder).Code);
            Assert.Equal(0, Called.In(log, "import", Checkout.Sample("materials"), "--log", folder).Code);
            foreach (var value in new[] { "1100", "1105", "1095", "1100" })
            {
                Assert.Equal(0, Called.In(log, ["drift", "--read", value, .. reading]).Code);
            }

            var said = Called.In(log, "drift", "--log", folder).Output;
            Assert.Contains("direct: reads 10.0 % too high", said, StringComparison.Ordinal);
            Assert.Contains("checked today with 4", said, StringComparison.Ordinal);
            var check = Called.In(
                log,
                "check",
                Checkout.Sample("checks/lantern-gel-21.csv"),
                "--low",
                "7650",
                "--high",
                "10350",
                "--log",
                folder);
            Assert.Contains("10.0 % too high, corrected for", check.Output, StringComparison.Ordinal);
            Assert.Contains("8\u2009310", check.Output, StringComparison.Ordinal);
            Assert.Equal(0, Called.In(log, "drift", "--void", "1", "--why", "typed wrong", "--log", folder).Code);
            Assert.Contains("\"readings\": 3", Called.In(log, "drift", "--json", "--log", folder).Output, StringComparison.Ordinal);
            Assert.Equal(2, Called.In(log, "drift", "--void", "1", "--why", "again", "--log", folder).Code);
            Assert.Equal(1, Called.In(log, "drift", "--void", "1", "--log", folder).Code);
            Assert.Equal(1, Called.In(log, "drift", "--read", "5", "--log", folder).Code);
            Assert.Equal(2, Called.In(log, "drift", "--method", "direct", "--read", "5", "--log", folder).Code);

            var other = Path.Combine(log, "other");
            Assert.Equal(0, Called.In(log, "export", "--oils", "-o", Path.Combine(log, "oils.csv"), "--log", folder).Code);
            Assert.Equal(0, Called.In(log, "import", Path.Combine(log, "oils.csv"), Checkout.Sample("materials"), "--log", other).Code);
            Assert.Equal(Called.In(log, "drift", "--log", folder).Output, Called.In(log, "drift", "--log", other).Output);
        }
        finally
        {
            Directory.Delete(log, recursive: true);
        }
    }

    [Fact]
    public void The_example_and_every_column_stand_in_the_description()
    {
        Enter();
        var doc = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "file-formats.md"));
        var section = doc[doc.IndexOf("## Oils file", StringComparison.Ordinal)..doc.IndexOf("## The log", StringComparison.Ordinal)];
        Assert.NotEmpty(Read(section.Split("```")[1].TrimStart()));
        Assert.All(OilColumns.All, name => Assert.Contains($"`{name}`", section, StringComparison.Ordinal));
    }

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    protected virtual void Enter()
    {
    }

    private static (int Added, int Voided, int Already) Merged(BenchLog log, params string[] rows)
    {
        var (outcome, merge) = log.AddOils(Read(Head + string.Join('\n', rows) + "\n"));
        Assert.IsType<WriteOutcome.Saved>(outcome);
        return (merge.Added, merge.Voided, merge.Already);
    }

    private static ImmutableArray<OilRow> Read(string text) => OilFileReader.Parse("oils.csv", Encoding.UTF8.GetBytes(text)) switch
    {
        TableOutcome<OilFile>.Read read => read.File.Rows,
        TableOutcome<OilFile>.Refused refused => throw new InvalidOperationException(refused.Refusal.Text),
        _ => throw new InvalidOperationException("a case that the test does not know"),
    };

    private static string Write(ImmutableArray<OilRow> rows)
    {
        using var stream = new MemoryStream();
        OilFileWriter.Write(rows, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static string Whole(OilRow row) => $"{row.Key} {row.Void} {row.Reading}";
}
