using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tables;
using Viscolog.Tests.MaterialFiles;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

public sealed class BenchLogTests
{
    [Fact]
    public void What_was_imported_is_there_after_the_log_was_closed()
    {
        using var bench = new Bench();
        var file = Bench.File("glaze 1", 5);
        using (var log = bench.Open())
        {
            var plan = Bench.Plan(log.Import(file, CancellationToken.None));
            Assert.Equal((1, true, 5, 0), (plan.Run, plan.IsNew, plan.Added, plan.Already));
        }

        using var again = bench.Open(LogUse.Read);
        Assert.Empty(again.Notes);
        var run = again.Run(1)!;
        Assert.Equal(FileText.Whole(file with { Id = run.File.Id }), FileText.Whole(run.File));
        var summary = Assert.Single(again.Runs());
        Assert.Equal(
            (1, "glaze 1", "Gable", 5, 5),
            (summary.Number, summary.Header.Name, summary.Header.Base.Name, summary.Entries, summary.Readings));
    }

    [Fact]
    public void Any_run_file_comes_back_as_it_went_in()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        Check.Sample(
            RunFileGen.Files,
            file =>
            {
                var outcome = log.Begin(file with { Id = Guid.NewGuid() });
                Assert.IsType<WriteOutcome.Saved>(outcome.Outcome);
                var back = log.Run(outcome.Run)!.File;
                Assert.Equal(FileText.Write(file with { Id = back.Id }), FileText.Write(back));
            },
            iter: 300,
            threads: 1);
    }

    [Fact]
    public void Whatever_was_done_the_journal_alone_makes_the_same_log()
        => Gen.Select(RunFileGen.Files.Array[1, 4], Gen.Select(Gen.Int[0, 3], Gen.Int[0, 99], Gen.Int[0, 99]).Array[0, 8]).Sample(
            (files, deeds) =>
            {
                using var bench = new Bench();
                string[] before;
                using (var log = bench.Open())
                {
                    foreach (var file in files)
                    {
                        log.Begin(file with { Id = null });
                    }

                    foreach (var (deed, run, row) in deeds)
                    {
                        Do(log, deed, 1 + (run % files.Length), row, files[run % files.Length]);
                    }

                    before = Exports(log);
                }

                Assert.Null(LogCheck.Of(bench.Open(), null).Difference);
                File.Delete(bench.Place.Seal);
                using (var again = bench.Open(LogUse.Read))
                {
                    Assert.Contains("had not been closed", Assert.Single(again.Notes), StringComparison.Ordinal);
                    Assert.Equal(before, Exports(again));
                }

                var check = LogCheck.Of(bench.Open(), null);
                Assert.Null(check.Difference);
                Assert.Equal(files.Length, check.Runs);
            },
            iter: Sweep.Tries(40, 15),
            threads: 1);

    [Fact]
    public void What_was_voided_or_replaced_stays_in_sight_and_counts_no_more()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("glaze 1", 3), CancellationToken.None);
        var row = Bench.File("glaze 1", 1).Contents().Single();
        Assert.IsType<WriteOutcome.Saved>(log.Replace(1, 2, "wrong cup", row));
        Assert.IsType<WriteOutcome.Saved>(log.Void(1, 3, "spilt"));
        Assert.Equal("that row is void already: spilt", Assert.IsType<WriteOutcome.NotSaved>(log.Void(1, 3, "again")).Reason);
        var run = log.Run(1)!;
        Assert.Equal([1, 2, 4, 3], run.Rows);
        Assert.Equal(0.02, run.File.Run.PotNow().In("TA").Grams, 1e-12);
        var summary = log.Runs()[0];
        Assert.Equal((4, 2, 2), (summary.Entries, summary.Voided, summary.Readings));
    }

    [Fact]
    public void What_could_not_be_exported_and_read_again_is_not_logged()
    {
        using var bench = Bench.Filled();
        using var log = bench.Open();
        Viscolog.Core.Measuring.InstrumentValue krebs = new Viscolog.Core.Measuring.InstrumentValue.Krebs(80);
        Refused(
            new() { Dosed = new("XX", Grams(1)) },
            "thickener: read 'XX', expected a thickener of the header (TA, TU), or a header line '# thickener: NAME' for it");
        Refused(new() { Water = Grams(1e10) }, "water_g: read '10000000000', expected a number in g, 0 or more and at most 1000000000");
        Refused(
            new() { LetDown = Grams(0) },
            "read a row in which nothing happens, expected an addition, let-down, water, sample, reading or note; "
                + "fill the row in or delete it");
        Refused(new() { Note = "a\0b" }, "read byte 0x00, expected text in UTF-8; save the file again as CSV in UTF-8");
        Refused(new() { Note = "again", Replaces = true }, "replaces: read 'above', expected 'above' in a row that replaces a void row "
            + "right above it, or an empty cell");
        Refused(
            new() { Reading = new() { Value = krebs } },
            "ku: read '80', expected an empty cell: the method direct reads viscosity_mpas or viscosity_cp or viscosity_pas "
                + "or viscosity_p");
        Refused(
            new() { Reading = new() { Acidity = Viscolog.Core.Quantities.Acidity.FromPh(8), Wait = TimeSpan.FromSeconds(29) } },
            "wait_s: read '29', expected 30 s or more: the pot keeps standing until something is added");
        Assert.Equal(5, log.Run(1)!.Rows.Length);

        void Refused(FileRow row, string why) => Assert.Equal(why, Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, row)).Reason);
        static Viscolog.Core.Quantities.Mass Grams(double grams) => Viscolog.Core.Quantities.Mass.FromGrams(grams);
    }

    [Fact]
    public void A_row_is_not_made_void_where_what_follows_would_contradict_itself()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(
            FileText.Read("# base_g: 120\n# thickener: TA\nwater_g,wait_s,viscosity_mpas\n,60,800\n5,20,700\n"), CancellationToken.None);
        Assert.IsType<WriteOutcome.Saved>(log.Add(1, new() { Water = Viscolog.Core.Quantities.Mass.FromGrams(1) }));
        Assert.IsType<WriteOutcome.Saved>(
            log.Add(
                1, new() { Reading = new() { Acidity = Viscolog.Core.Quantities.Acidity.FromPh(8), Wait = TimeSpan.FromSeconds(10) } }));
        Assert.Equal(
            "wait_s: read '10', expected 20 s or more: the pot keeps standing until something is added",
            Assert.IsType<WriteOutcome.NotSaved>(log.Void(1, 3, "slip")).Reason);
        Assert.IsType<WriteOutcome.Saved>(log.Void(1, 2, "slip"));
    }

    [Fact]
    public void A_row_that_the_run_could_not_be_read_back_with_is_not_saved()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("glaze 1", 3), CancellationToken.None);
        var journal = new FileInfo(bench.Place.Journal).Length;
        var sample = new FileRow { Taken = Viscolog.Core.Quantities.Mass.FromGrams(500) };
        Assert.Contains(
            "less than the 120.03 g in the pot", Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, sample)).Reason, StringComparison.Ordinal);
        Assert.Equal(journal, new FileInfo(bench.Place.Journal).Length);
    }

    [Fact]
    public void A_header_stated_anew_leaves_the_rows_and_the_earlier_header_is_remembered()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("glaze 1", 3), CancellationToken.None);
        Assert.IsType<WriteOutcome.Saved>(log.Restate(1, Bench.File("glaze 1", 0, "# target_mpas: 9000\n")));
        Assert.Equal((9000, 3), (log.Run(1)!.File.Run.Target!.Band.Aim.MilliPascalSeconds, log.Run(1)!.Rows.Length));
        Assert.Equal(2, log.Run(1)!.Headers.Length);
    }

    [Fact]
    public void Texts_of_any_length_are_logged_or_refused_and_the_log_opens()
    {
        using var bench = new Bench();
        var name = new string('é', 3000);
        using (var log = bench.Open())
        {
            Assert.IsType<WriteOutcome.Saved>(
                log.Import(Bench.File(name, 2, $"# lot: {name}\n# thickener: {name}\n"), CancellationToken.None).Outcome);
            Assert.Equal(
                0,
                Bench.Plan(log.Import(Bench.File(name, 2, $"# lot: {name}\n# thickener: {name}\n"), CancellationToken.None)).RecordCount);
            var endless = new FileRow { Note = new string('x', JournalWriter.LongestLine) };
            Assert.Contains("can't be logged", Assert.IsType<WriteOutcome.NotSaved>(log.Add(1, endless)).Reason, StringComparison.Ordinal);
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(900)));
        }

        File.Delete(bench.Place.Seal);
        using var again = bench.Open();
        Assert.Equal(3, again.Run(1)!.Rows.Length);
        Assert.Single(again.Earlier(again.Run(1)!.File.Run, null));
    }

    [Fact]
    public void A_material_is_stated_anew_where_any_cell_changed_came_or_went()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        int Stated(string lot)
        {
            var file = Encoding.UTF8.GetBytes($"# viscolog-materials: 1\nkind,name,colour,lot\nbase,Gable,white,{lot}\n");
            return log.State(Assert.IsType<TableOutcome<MaterialFile>.Read>(MaterialFileReader.Parse("m", file)).File.Rows).Stated;
        }

        Assert.Equal([1, 0, 1, 1, 1, 0], [Stated(""), Stated(""), Stated("7"), Stated("8"), Stated(""), Stated("")]);
    }

    [Fact]
    public void A_damaged_journal_is_written_again_from_the_query_copy()
    {
        using var bench = new Bench();
        string[] before;
        using (var log = bench.Open())
        {
            log.Import(Bench.File("glaze 1", 3), CancellationToken.None);
            log.Import(Bench.File("glaze 2", 3), CancellationToken.None);
            log.Replace(2, 1, "a slip", Bench.File("glaze 1", 1).Contents().Single());
            log.Restate(1, Bench.File("glaze 1", 0, "# target_mpas: 9000\n"));
            Assert.IsType<WriteOutcome.Saved>(log.State(Materials()).Outcome);
            Assert.IsType<WriteOutcome.Saved>(log.AddOils(Oils()).Outcome);
            Assert.IsType<WriteOutcome.Saved>(log.VoidOil(2, "the wrong oil"));
            before = Exports(log);
        }

        var bytes = File.ReadAllBytes(bench.Place.Journal);
        bytes[bytes.Length / 2] ^= 4;
        File.WriteAllBytes(bench.Place.Journal, bytes);
        Assert.Contains("is damaged: line", bench.Refusal(), StringComparison.Ordinal);
        var restored = LogBackups.RestoreFromCopy(bench.Place, DateTimeOffset.UtcNow, null).Made!;
        Assert.Equal(bytes, File.ReadAllBytes(Path.Combine(restored.Aside!, "readings.journal")));
        using var again = bench.Open();
        Assert.Empty(again.Notes);
        Assert.Equal(before, Exports(again));
        Assert.Null(LogCheck.Of(again, null).Difference);
    }

    [Fact]
    public void A_query_copy_that_nothing_vouches_for_is_not_taken()
    {
        using var bench = new Bench();
        bench.Open().Dispose();
        var bytes = File.ReadAllBytes(bench.Place.Copy);
        bytes[^100] ^= 4;
        File.WriteAllBytes(bench.Place.Copy, bytes);
        Assert.Contains(
            "not as it was left", LogBackups.RestoreFromCopy(bench.Place, DateTimeOffset.UtcNow, null).Reason, StringComparison.Ordinal);
        File.Delete(bench.Place.Seal);
        Assert.Contains(
            "nothing vouches", LogBackups.RestoreFromCopy(bench.Place, DateTimeOffset.UtcNow, null).Reason, StringComparison.Ordinal);
    }

    private static ImmutableArray<MaterialRow> Materials()
        => Assert.IsType<TableOutcome<MaterialFile>.Read>(MaterialFileReader.Parse("m", Sample("materials/workshop.csv"))).File.Rows;

    private static ImmutableArray<OilRow> Oils()
        => Assert.IsType<TableOutcome<OilFile>.Read>(OilFileReader.Parse("o", Sample("oils/workshop-oils.csv"))).File.Rows;

    private static byte[] Sample(string name) => File.ReadAllBytes(Checkout.Sample(name));

    private static string[] Exports(BenchLog log)
        =>
        [
            .. Runs(log), .. log.Materials().Select(MaterialText.Whole),
            .. log.Oils().Select(o => FormattableString.Invariant($"{o.Number} {o.Row.Key} {o.Row.Void}")),
        ];

    private static string[] Runs(BenchLog log)
        =>
        [
            .. log.Runs().Select(r => log.Run(r.Number)!).Select(r => string.Join(' ', r.Rows) + "\n" + FileText.Write(r.File)),
            .. log.Runs().Select(r => FormattableString.Invariant($"{r} {r.Header} {r.Header.Base} {string.Join(',', r.Thickeners)}")),
        ];

    private static void Do(BenchLog log, int deed, int run, int row, RunFile file)
    {
        var rows = log.Run(run)!.Rows;
        var new1 = file.Rows.IsEmpty ? null : file.Contents().First();
        _ = (deed, rows.IsEmpty, new1) switch
        {
            (0, false, _) => log.Void(run, rows[row % rows.Length], "a slip"),
            (1, false, { } by) => log.Replace(run, rows[row % rows.Length], "a slip", by),
            (2, _, { } more) => log.Add(run, more),
            _ => log.Restate(run, log.Run(run)!.File with { UnknownKeys = [new("x-seen", FormattableString.Invariant($"{row}"))] }),
        };
    }
}
