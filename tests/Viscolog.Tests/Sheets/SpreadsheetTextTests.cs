using System.Text;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Tests.RunFiles;

namespace Viscolog.Tests.Sheets;

/// <summary>What spreadsheets do to the text of a run file.</summary>
public sealed class SpreadsheetTextTests
{
    private const string Plain = "# name: pot, first\n# base_g: 120.5\n# thickener: TA; range_pct=0.5-4\n"
        + "thickener,added_g,wait_s,viscosity_mpas,note\nTA,0.6,60,1420.5,\"a, b\"\n";

    public static TheoryData<string, string> Saved { get; } = new()
    {
        {
            "separators behind everything",
            "# name: pot, first,,,\n# base_g: 120.5,,,,\n# thickener: TA; range_pct=0.5-4,,,,\n"
                + "thickener,added_g,wait_s,viscosity_mpas,note,,\nTA,0.6,60,1420.5,\"a, b\",,\n,,,,,,\n"
        },
        {
            "header lines in quotes",
            "\"# name: pot, first\",,,,\n\"# base_g: 120.5\",,,,\n\"# thickener: TA; range_pct=0.5-4\",,,,\n"
                + "thickener,added_g,wait_s,viscosity_mpas,note\nTA,0.6,60,1420.5,\"a, b\"\n"
        },
        {
            "values in cells of their own",
            "# name:,\"pot, first\",,,\n#base_g,120.5,,,\n# thickener:,TA; range_pct=0.5-4,,,\n"
                + "thickener,added_g,wait_s,viscosity_mpas,note\nTA,0.6,60,1420.5,\"a, b\"\n"
        },
        {
            "blank rows as separators",
            ",,,,\n# name: pot, first\n,,,,\n# base_g: 120.5\n#,,,,\n# thickener: TA; range_pct=0.5-4\n\"\",,,,\n"
                + "thickener,added_g,wait_s,viscosity_mpas,note\n,,,,\nTA,0.6,60,1420.5,\"a, b\"\n"
        },
        {
            "semicolons",
            "# name: pot, first;;;;\n# base_g: 120,5;;;;\n\"# thickener: TA; range_pct=0,5-4\";;;;\n"
                + "thickener;added_g;wait_s;viscosity_mpas;note\nTA;0,6;60;1420,5;a, b\n"
        },
        {
            "semicolons, and a text with points",
            "# name:;pot, first;;;\n# base_g:;120,5;;;\n# thickener:;\"TA; range_pct=0.5-4\";;;\n"
                + "thickener;added_g;wait_s;viscosity_mpas;note\nTA;0,6;60;1420,5;a, b\n"
        },
        {
            "a line that names the separator",
            "sep=;\n# name: pot, first;;;;\n# base_g: 120,5;;;;\n# thickener: TA; range_pct=0,5-4;;;\n"
                + "thickener;added_g;wait_s;viscosity_mpas;note\nTA;0,6;60;1420,5;a, b\n"
        },
        {
            "tabs and decimal points",
            "# name: pot, first\t\t\t\t\n# base_g: 120.5\t\t\t\t\n# thickener: TA; range_pct=0.5-4\t\t\t\t\n"
                + "thickener\tadded_g\twait_s\tviscosity_mpas\tnote\nTA\t0.6\t60\t1420.5\ta, b\n"
        },
        {
            "tabs and decimal commas",
            "# name: pot, first\t\t\t\t\n# base_g: 120,5\t\t\t\t\n# thickener: TA; range_pct=0,5-4\t\t\t\t\n"
                + "thickener\tadded_g\twait_s\tviscosity_mpas\tnote\nTA\t0,6\t60\t1420,5\ta, b\n"
        },
    };

    [Theory]
    [MemberData(nameof(Saved))]
    public void It_reads_as_before(string what, string text)
    {
        Assert.NotEmpty(what);
        foreach (var breaks in new[] { text, text.Replace("\n", "\r\n", StringComparison.Ordinal) })
        {
            Encoding[] encodings =
            [
                new UTF8Encoding(false), new UTF8Encoding(true), new UnicodeEncoding(false, true), new UnicodeEncoding(true, true),
            ];
            foreach (var encoding in encodings)
            {
                var outcome = RunFileReader.Parse("pot.csv", (byte[])[.. encoding.Preamble, .. encoding.GetBytes(breaks)]);
                Assert.Equal(FileText.Whole(FileText.Read(Plain)), FileText.Whole(Assert.IsType<TableOutcome<RunFile>.Read>(outcome).File));
            }
        }
    }

    [Theory]
    [InlineData("# note: a, b,\n", "a, b")]
    [InlineData("\"# note: a, b,\"\n", "a, b,")]
    [InlineData("# note: said \"well, now\"\n", "said \"well, now\"")]
    [InlineData("# note: a,\"b\n", "a,\"b")]
    [InlineData("# note:,\"two\nlines\"\n", "two lines")]
    [InlineData("\"# note: \"\"quoted\"\"\",,\n", "\"quoted\"")]
    public void Separators_and_quotes_that_belong_to_a_text_stay(string line, string note)
        => Assert.Equal(note, FileText.Read("# base_g: 1\n" + line + "thickener,wait_s,viscosity_mpas\n").Run.Note);

    [Theory]
    [InlineData("a, b,")]
    [InlineData(",x")]
    [InlineData("a,\"b")]
    [InlineData("a;\"b\";")]
    [InlineData("\"a\", \"b\"")]
    [InlineData("\"")]
    [InlineData("a\t\"b\"")]
    public void Such_texts_are_written_so_that_they_read_as_they_are(string note)
    {
        var text = FileText.Write(
            FileText.Read("# base_g: 1\nthickener,wait_s,viscosity_mpas\n") is var file
                ? file with { Run = file.Run with { Note = note } }
                : null!);
        Assert.Equal(note, FileText.Read(text).Run.Note);
    }

    /// <summary>1,180 beside tabs may be a thousand and more; nobody guesses.</summary>
    [Theory]
    [InlineData("1,180", "with a decimal point")]
    [InlineData("1,180\t1,5", "with a decimal comma")]
    [InlineData("12.5\t1,5", "with a decimal comma as others in this file")]
    public void A_comma_beside_tabs_that_may_part_thousands_is_refused(string cells, string expected)
        => Assert.Contains(
            expected,
            FileText.Refusal($"# base_g: 1\nviscosity_mpas\ttemp_c\tph\n{cells}\tx\n"),
            StringComparison.Ordinal);

    [Fact]
    public void The_line_of_a_refusal_counts_the_lines_of_a_header_cell()
        => Assert.StartsWith(
            "pot.csv, line 5,",
            FileText.Refusal("# base_g: 1\n\"# note: two\nlines\",,\nviscosity_mpas,note\nx,\n"),
            StringComparison.Ordinal);
}
