using Viscolog.Store;
using Viscolog.Tests.RunFiles;

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
        Assert.Equal((1, "glaze 1", "GB-40", 5, 5), (summary.Number, summary.Name, summary.Base, summary.Entries, summary.Readings));
    }

    [Fact]
    public void Any_run_file_comes_back_as_it_went_in()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        CsCheck.Check.Sample(
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
}
