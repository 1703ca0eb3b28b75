using CsCheck;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>Logs of several benches brought together.</summary>
public sealed class MergeTests
{
    [Fact]
    public void Importing_twice_adds_nothing_and_a_longer_file_adds_the_rest()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        var number = 0;
        Gen.Select(RunFileGen.Files, Gen.Int[0, 12]).Sample(
            (file, cut) =>
            {
                var whole = Named(file, $"merge {++number}");
                var part = Cut(whole, cut);
                Assert.Equal(part.Rows.Length, Bench.Plan(log.Import(part, CancellationToken.None)).Added);
                Assert.Equal(whole.Rows.Length - part.Rows.Length, Bench.Plan(log.Import(whole, CancellationToken.None)).Added);
                var again = Bench.Plan(log.Import(whole, CancellationToken.None));
                Assert.Equal((0, 0, whole.Rows.Length, 0), (again.Added, again.Voided, again.Already, again.RecordCount));
                Assert.Equal(0, Bench.Plan(log.Import(part, CancellationToken.None)).RecordCount);
                var back = log.Run(again.Run)!.File;
                Assert.Equal(FileText.Write(whole with { Id = back.Id }), FileText.Write(back));
            },
            iter: Sweep.Tries(150, 60),
            threads: 1);
    }

    [Theory]
    [InlineData("# method: krebs\n# thickener: TA\n")]
    [InlineData("# thickener: TU\n")]
    public void A_header_that_the_rows_do_not_fit_is_refused(string header)
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("glaze 1", 3), CancellationToken.None);
        var id = log.Run(1)!.File.Id;
        var other = FileText.Read($"# run_id: {id}\n# name: glaze 1\n# base: Gable\n# base_g: 120\n{header}thickener,added_g,wait_s\n");
        Assert.Contains(
            ", expected ",
            Assert.IsType<WriteOutcome.Contradicted>(log.Import(other, CancellationToken.None).Outcome).Trouble,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Two_benches_give_a_plain_file_the_same_identity()
    {
        using var left = new Bench();
        using var right = new Bench();
        using var first = left.Open();
        using var second = right.Open();
        var file = Bench.File("glaze 1", 3);
        first.Import(file, CancellationToken.None);
        second.Import(file, CancellationToken.None);
        Assert.Equal(first.Run(1)!.File.Id, second.Run(1)!.File.Id);
        Assert.Equal(0, Bench.Plan(first.Import(second.Run(1)!.File, CancellationToken.None)).RecordCount);
    }

    [Fact]
    public void A_run_continued_elsewhere_comes_back_with_its_voids_and_replacements()
    {
        using var left = new Bench();
        using var right = new Bench();
        using var home = left.Open();
        using var away = right.Open();
        home.Import(Bench.File("glaze 1", 4), CancellationToken.None);
        away.Import(home.Run(1)!.File, CancellationToken.None);
        Saved(away.Replace(1, 2, "typed a digit too many", Row(",10,35,12345")));
        Saved(away.Void(1, 4, "read on the wrong pot"));
        Saved(away.Add(1, Row("0.02,10,30,900")));
        Saved(away.Replace(1, 6, "again", Row("0.02,10,30,901")));

        var plan = Bench.Plan(home.Import(away.Run(1)!.File, CancellationToken.None));
        Assert.Equal((3, 2, 4), (plan.Added, plan.Voided, plan.Already));
        Assert.Equal(FileText.Write(away.Run(1)!.File), FileText.Write(home.Run(1)!.File));
        Assert.Equal(0, Bench.Plan(away.Import(home.Run(1)!.File, CancellationToken.None)).RecordCount);
        Assert.Contains(",above", FileText.Write(home.Run(1)!.File), StringComparison.Ordinal);
    }

    [Fact]
    public void Both_may_have_voided_and_replaced_different_rows()
    {
        using var left = new Bench();
        using var right = new Bench();
        using var home = left.Open();
        using var away = right.Open();
        home.Import(Bench.File("glaze 1", 4), CancellationToken.None);
        away.Import(home.Run(1)!.File, CancellationToken.None);
        Saved(home.Replace(1, 1, "no lid on", Row("0.01,10,30,777")));
        Saved(away.Replace(1, 3, "typed twice", Row("0.01,10,30,888")));
        Saved(away.Add(1, Row("0.02,10,30,900")));

        home.Import(away.Run(1)!.File, CancellationToken.None);
        away.Import(home.Run(1)!.File, CancellationToken.None);
        Assert.Equal(FileText.Write(away.Run(1)!.File), FileText.Write(home.Run(1)!.File));
        Assert.Equal(7, home.Run(1)!.Rows.Length);
    }

    [Fact]
    public void A_run_continued_in_two_ways_is_shown_and_refused()
    {
        using var left = new Bench();
        using var right = new Bench();
        using var home = left.Open();
        using var away = right.Open();
        home.Import(Bench.File("glaze 1", 2), CancellationToken.None);
        away.Import(home.Run(1)!.File, CancellationToken.None);
        Saved(home.Add(1, Row("0.01,10,30,900")));
        Saved(away.Add(1, Row("0.02,10,30,950")));
        var before = FileText.Write(home.Run(1)!.File);
        var refused = Assert.IsType<WriteOutcome.Contradicted>(home.Import(away.Run(1)!.File, CancellationToken.None).Outcome);
        Assert.Equal(
            "run 1 of the log differs: row 3 (thickener TA, added_g 0.01, stir_s 10, wait_s 30, viscosity_mpas 900) in the log, "
                + "row 3 (thickener TA, added_g 0.02, stir_s 10, wait_s 30, viscosity_mpas 950) in the file; the run went on in two "
                + "places; void in one what the other lacks, or give one its own run_id",
            refused.Reason);
        Assert.Equal(before, FileText.Write(home.Run(1)!.File));
    }

    [Fact]
    public void A_named_file_that_was_changed_is_refused_until_the_wrong_row_is_made_void()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("glaze 1", 3), CancellationToken.None);
        var text = FileText.Write(Bench.File("glaze 1", 3));
        var changed = text.Replace(",801", ",8010", StringComparison.Ordinal);
        Assert.IsType<WriteOutcome.Contradicted>(log.Import(FileText.Read(changed), CancellationToken.None).Outcome);
        var mended = Bench.File("glaze 1", 3, more: "# tolerance_pct: 15\n");
        Assert.IsType<WriteOutcome.Saved>(log.Import(mended, CancellationToken.None).Outcome);

        var voided =
            FileText.Read(string.Join('\n', text.TrimEnd().Split('\n').Select(l => l.StartsWith("thickener,", StringComparison.Ordinal)
            ? l + ",void,replaces"
            : l.Contains(",801", StringComparison.Ordinal)
            ? l + ",typed wrong,\nTA,0.01,10,30,8010,,above"
            : l.StartsWith('#')
            ? l
            : l + ",,")));
        var plan = Bench.Plan(log.Import(voided, CancellationToken.None));
        Assert.Equal((1, 1, 3), (plan.Added, plan.Voided, plan.Already));
        Assert.Equal(
            FileText.Whole(voided with { Id = log.Run(1)!.File.Id, UnusedTolerance = log.Run(1)!.File.UnusedTolerance }),
            FileText.Whole(log.Run(1)!.File));
    }

    [Fact]
    public void Files_without_a_name_that_differ_are_different_runs()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        const string header = "# base_g: 100\n# thickener: TA\nthickener,added_g,wait_s,viscosity_mpas\n,,60,850\n";
        Assert.True(Bench.Plan(log.Import(FileText.Read(header + "TA,1,30,900\n"), CancellationToken.None)).IsNew);
        Assert.True(Bench.Plan(log.Import(FileText.Read(header + "TA,2,30,990\n"), CancellationToken.None)).IsNew);
        Assert.Equal(0, Bench.Plan(log.Import(FileText.Read(header + "TA,2,30,990\n"), CancellationToken.None)).RecordCount);
        var longer = Bench.Plan(log.Import(FileText.Read(header + "TA,2,30,990\nTA,1,30,1200\n"), CancellationToken.None));
        Assert.Equal((2, 1), (longer.Run, longer.Added));
    }

    [Fact]
    public void A_header_stated_anew_elsewhere_is_taken_over_unless_it_was_changed_here_too()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        log.Import(Bench.File("glaze 1", 2), CancellationToken.None);
        var file = log.Run(1)!.File;
        var thicker = Bench.File("glaze 1", 2, "# target_mpas: 9000\n") with { Id = file.Id };
        Assert.Equal(1, Bench.Plan(log.Import(thicker, CancellationToken.None)).RecordCount);
        Assert.Equal(0, Bench.Plan(log.Import(file, CancellationToken.None)).RecordCount);
        Assert.Equal(9000, log.Run(1)!.File.Run.Target!.Band.Aim.MilliPascalSeconds, 1e-9);
        var third = Bench.File("glaze 1", 2, "# target_mpas: 8000\n") with { Id = file.Id };
        Assert.Contains("'target_mpas: 9000' in the log, 'target_mpas: 8000' in the file",
            Assert.IsType<WriteOutcome.Contradicted>(log.Import(third, CancellationToken.None).Outcome).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_that_only_one_side_knows_are_kept()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        const string header = "# name: glaze 9\n# base_g: 100\n# thickener: TA\n";
        log.Import(FileText.Read(header + "added_g,viscosity_mpas,gloss\n,850,80\n1,900,\n"), CancellationToken.None);
        log.Import(FileText.Read(header + "added_g,viscosity_mpas,shade\n,850,\n1,900,\n1,990,warm\n"), CancellationToken.None);
        Assert.EndsWith(
            "viscosity_mpas,gloss,shade\n,,,,850,80,\nTA,1,,,900,,\nTA,1,,,990,,warm\n",
            FileText.Write(log.Run(1)!.File),
            StringComparison.Ordinal);
    }

    private static void Saved(WriteOutcome outcome) => Assert.IsType<WriteOutcome.Saved>(outcome);

    private static FileRow Row(string cells)
        => FileText.Read("# base_g: 120\n# thickener: TA\nadded_g,stir_s,wait_s,viscosity_mpas\n" + cells + "\n").Contents().Single();

    private static RunFile Named(RunFile file, string name) => file with { Id = null, Run = file.Run with { Name = name } };

    private static RunFile Cut(RunFile file, int rows) => file.With(file.Contents().Take(rows).ToList());
}
