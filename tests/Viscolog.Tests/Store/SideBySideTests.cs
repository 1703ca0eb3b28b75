using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>What is done to long runs without holding their rows.</summary>
public sealed class SideBySideTests
{
    private const int Rows = 5000;

    private static readonly RunFile Header = FileText.Read(
        "# name: long\n# base_g: 120\n# thickener: TA\nthickener,added_g,wait_s,viscosity_mpas\n");

    [Fact]
    public void A_file_is_compared_with_the_log_row_by_row()
    {
        var (there, furthest) = (0, 0);
        var merge = RowMerge.Of(
            Logged(i => there = i), Sent(Rows + 10, i => furthest = Math.Max(furthest, Math.Abs(i - there) * (i <= Rows ? 1 : 0))));
        Assert.Equal((Rows, 10, 0), (merge.Already, merge.Changes.Added, merge.Changes.Voided));
        Assert.InRange(furthest, 0, 2);
        Assert.Null(merge.Fault);
    }

    /// <summary>A row that one side put in place of a void one lets it fall behind by one; nothing more is looked at ahead.</summary>
    [Fact]
    public void Rows_put_in_place_of_others_let_one_side_look_no_further_than_they_are()
    {
        var (there, furthest) = (0, 0);
        var rows = Enumerable.Range(1, Rows).SelectMany(i => i % 100 == 0
            ? (FileRow[])[Row(i) with { Void = "typed wrong" }, Row(i + 7) with { Replaces = true }]
            : [Row(i)]);
        var file = new RunToImport(Header, Rows + (Rows / 100), Seen(rows, i => furthest = Math.Max(furthest, i - there - (there / 100))));
        var merge = RowMerge.Of(Logged(i => there = i), file);
        Assert.Equal((Rows, Rows / 100, Rows / 100), (merge.Already, merge.Changes.Added, merge.Changes.Voided));
        Assert.InRange(furthest, 0, 3);
        Assert.Equal(Rows / 100 * 2, merge.Changes.Records().Count());
    }

    [Fact]
    public void A_file_is_written_while_its_rows_are_gone_through()
    {
        using var stream = new MemoryStream();
        var (passes, written) = (0, 0L);
        RunFileWriter.Write(
            Header,
            Seen(
                Enumerable.Range(1, 10 * Rows).Select(Row),
                i => (passes, written) = (passes + (i == 1 ? 1 : 0), i == 8 * Rows ? stream.Length : written)),
            stream,
            spreadsheetSafe: false);
        Assert.Equal(2, passes);
        Assert.InRange(written, stream.Length / 2, stream.Length - 1);
    }

    [Fact]
    public void The_second_row_added_to_a_long_run_goes_through_no_other()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Sent(Rows, _ => { }), CancellationToken.None);
        var first = Allocated(() => log.Add(1, Row(Rows + 1)));
        Assert.IsType<WriteOutcome.Saved>(log.SetClock(1, new(DateTimeOffset.UnixEpoch, null)));
        var second = Allocated(() => log.Edit(1, new RunEdit.Add(Row(Rows + 2))));
        Assert.True(second * 5 < first, FormattableString.Invariant($"{first} bytes the first time, {second} the second"));
        Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, Row(1)));
        Assert.IsType<WriteOutcome.Saved>(log.Add(1, Row(Rows + 3)));
        Assert.Equal(
            [Rows + 1, Rows + 2, Rows + 3], log.Run(1)!.File.Contents().Skip(Rows).Select(r => (int)r.Reading!.Wait!.Value.TotalSeconds));

        static long Allocated(Func<WriteOutcome> act)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.IsType<WriteOutcome.Saved>(act());
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
    }

    [Theory]
    [InlineData("show", "1")]
    [InlineData("show", "1", "--json")]
    public void A_long_run_is_answered_in_pieces(params string[] args)
    {
        using var bench = new Bench();
        using (var log = bench.Open())
        {
            log.Import(Sent(Rows, _ => { }), CancellationToken.None);
        }

        var (called, most) = Called.InPieces(bench.Place.Folder, args);
        Assert.Equal(0, called.Code);
        Assert.InRange(most, 1, called.Output.Length / 10);
    }

    private static StreamedRun Logged(Action<int> see)
        => new(1, Header with { Id = Guid.Empty }, Rows, Seen(Enumerable.Range(1, Rows).Select(i => new LoggedRow(i, Row(i), null)), see));

    private static RunToImport Sent(int rows, Action<int> see) => new(Header, rows, Seen(Enumerable.Range(1, rows).Select(Row), see));

    private static IEnumerable<T> Seen<T>(IEnumerable<T> rows, Action<int> see) => rows.Select((row, i) =>
    {
        see(i + 1);
        return row;
    });

    private static FileRow Row(int seconds)
        => new()
        {
            Reading = new()
            {
                Wait = TimeSpan.FromSeconds(seconds),
                Value = new Core.Measuring.InstrumentValue.Direct(Core.Quantities.Viscosity.FromMilliPascalSeconds(850)),
            },
        };
}
