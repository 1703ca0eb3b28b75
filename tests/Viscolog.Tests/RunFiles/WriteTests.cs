using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;

namespace Viscolog.Tests.RunFiles;

public class WriteTests
{
    private static readonly Run Bare = new(new(null), Mass.FromGrams(120));

    [Fact]
    public void A_bare_run_has_its_base_and_the_basic_columns()
        => Assert.Equal(
            "# viscolog-run: 1\n# base_g: 120\nthickener,added_g,stir_s,wait_s,viscosity_mpas\n", FileText.Write(RunFile.FromRun(Bare)));

    [Fact]
    public void A_full_run_is_written_in_the_order_of_the_format()
    {
        const string Text = """"
            # viscolog-run: 1
            # name: Harbour Lane wall gel 07
            # base: Wharf
            # base_g: 150.5
            # thickener: TA; chemistry=alkali-swellable; range_pct=0.5-4; price_per_kg=3.4; dilution=1:2; colour=white
            # thickener: TU
            # target_mpas: 9000
            # tolerance_pct: 12.5
            # target_string_mm: 40-60
            # bench: 4
            time,taken_g,let_down_g,water_g,thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,ph,string_mm,note,void,bath,"a;b"
            2026-03-02T09:15:00+01:00,,,,,,,60,850,,,,,,b1,
            2026-03-02T09:20:00.25+01:00,5,10,2,TA,0.6,10.5,30,1420,23.1,8.8,35,"thin, still",,,x
            ,,,,,,,90,1000000000,,,,,,,
            ,,,,,,,,,,,,"#1 ""read""",wrong pot,," z"

            """";
        Assert.Equal(Text, FileText.Write(FileText.Read(Text)));
    }

    [Theory]
    [InlineData("iso-2431-4", "cup_s")]
    [InlineData("krebs", "ku")]
    [InlineData("rotational", "torque_pct,rpm")]
    [InlineData("slump", "reading")]
    public void The_basic_value_column_is_that_of_the_method(string method, string columns)
        => Assert.Equal(
            $"# viscolog-run: 1\n# base_g: 120\n# method: {method}\nthickener,added_g,stir_s,wait_s,{columns}\n",
            FileText.Write(RunFile.FromRun(Bare with { Method = Method.Find(method) })));

    [Fact]
    public void Bytes_have_no_mark_and_line_feeds_alone()
    {
        var bytes = FileText.Bytes(RunFile.FromRun(Bare with { Name = "Gründung µ" }));
        Assert.Equal((byte)'#', bytes[0]);
        Assert.DoesNotContain((byte)'\r', bytes);
        Assert.Equal((byte)'\n', bytes[^1]);
    }

    [Fact]
    public void A_first_cell_that_looks_like_a_header_line_is_quoted()
    {
        var run = Bare with { Thickeners = [new("#1")], Entries = [new Entry.Dosed("#1", Mass.FromGrams(1))] };
        var text = FileText.Write(RunFile.FromRun(run));
        Assert.EndsWith("\n\"#1\",1,,,\n", text, StringComparison.Ordinal);
        Assert.Equal(run.Entries, FileText.Read(text).Run.Entries);
    }

    [Fact]
    public void Line_breaks_of_a_header_text_become_spaces()
        => Assert.Contains(
            "# note: two lines\n",
            FileText.Write(RunFile.FromRun(Bare with { Note = "two\nlines" })),
            StringComparison.Ordinal);

    [Theory]
    [InlineData("T;A")]
    [InlineData("TA, range_pct=1-5")]
    [InlineData(" TA")]
    [InlineData("")]
    [InlineData("T\nA")]
    public void A_thickener_that_no_header_line_can_name_is_a_mistake(string name)
        => Assert.Throws<ArgumentException>(() => FileText.Write(RunFile.FromRun(Bare with { Thickeners = [new(name)] })));

    [Fact]
    public void Entries_share_a_row_where_order_time_and_void_allow()
    {
        var noon = new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);
        var dose = new Entry.Dosed("TA", Mass.FromGrams(1));
        var read = new Entry.Measured(new() { Acidity = Acidity.FromPh(8) });
        Run run = Bare with
        {
            Entries =
            [
                dose, read, new Entry.Noted("a"),
                dose, dose with { Time = noon }, read with { Time = noon },
                new Entry.Noted("b") { Time = noon.ToOffset(TimeSpan.FromHours(1)) },
                read with { VoidReason = "x" }, new Entry.Noted("c") { VoidReason = "y" },
                new Entry.Watered(Mass.FromGrams(1)), new Entry.LetDown(Mass.FromGrams(1)), new Entry.TakenOut(Mass.FromGrams(1)),
            ],
        };
        Assert.Equal([3, 1, 2, 1, 1, 1, 1, 1, 1], RunFile.FromRun(run).Rows.Select(r => r.EntryCount));
        Assert.Empty(RunFile.FromRun(Bare).Rows);
    }
}
