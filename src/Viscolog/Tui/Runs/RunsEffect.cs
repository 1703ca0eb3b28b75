using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Practice;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.RunHeaders;
using Viscolog.Wording;

namespace Viscolog.Tui.Runs;

/// <summary>What the list of runs alone asks the world to do. The set of cases is closed.</summary>
internal abstract record RunsEffect : IEffect<RunsEvent>
{
    private RunsEffect()
    {
    }

    public abstract void Perform(IStage<RunsEvent> stage);

    private static void OpenBench(IStage<RunsEvent> stage, int run)
    {
        stage.Show(BenchScreen.On(stage.Context, stage.Context.Log.Run(run)!));
        stage.Send(new RunsEvent.Listed(RunsState.Of(stage.Context)));
    }

    /// <summary>Open a run at the bench.</summary>
    internal sealed record Open(int Run) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage) => OpenBench(stage, Run);
    }

    /// <summary>Ask for a new run, with what the last one used already filled in, and open it.</summary>
    internal sealed record Begin(int? Last) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage)
        {
            var log = stage.Context.Log;
            if (stage.Ask(RunForm.New(log.Materials(), Last is { } last ? log.Run(last) : null)) is not { } file)
            {
                return;
            }

            var (outcome, number) = log.Begin(file);
            if (outcome is WriteOutcome.Saved)
            {
                OpenBench(stage, number);
            }
            else
            {
                stage.Send(new RunsEvent.Told(TuiContext.Words(outcome, "")));
            }
        }
    }

    /// <summary>Draw runs on one chart.</summary>
    internal sealed record Compare(ImmutableSortedSet<int> Runs) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage)
        {
            var pictures = ImmutableArray.CreateBuilder<RunPicture>();
            foreach (var number in Runs)
            {
                var run = stage.Context.Log.Run(number)!.File.Run;
                if (Study.Of(new(run)) is StudyOutcome.Made { Study: { IsRead: true, Curve: { Plane: null } curve } })
                {
                    pictures.Add(curve);
                }
            }

            if (pictures.Count == 0)
            {
                stage.Send(new RunsEvent.Told(Say("none of these has a reading that can be drawn")));
            }
            else
            {
                stage.Show(ChartScreen.On(stage.Context, pictures.ToImmutable()));
            }
        }
    }

    /// <summary>Put a run away, or bring it back.</summary>
    internal sealed record PutAway(int Run, bool IsArchived) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage)
        {
            var outcome = stage.Context.Log.Archive(Run, IsArchived);
            stage.Send(new RunsEvent.Listed(RunsState.Of(stage.Context)));
            stage.Send(
                new RunsEvent.Told(
                    TuiContext.Words(
                        outcome, IsArchived ? Say($"run {Run} is put away; Ctrl+P shows it") : Say($"run {Run} is back in the list"))));
        }
    }

    /// <summary>Compare the thickeners of runs in a table.</summary>
    internal sealed record Tabulate(ImmutableSortedSet<int> Runs) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage)
        {
            var runs = Runs.Select(n => stage.Context.Log.Run(n)!.File.Run).ToList();
            stage.Show(HelpScreen.On(stage.Context, Say("Thickeners compared"), ComparisonWords.Of(runs)));
        }
    }

    /// <summary>Go through a run reading by reading: what was known, what would have been advised, what was done.</summary>
    internal sealed record Replay(int Run) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage)
        {
            var file = stage.Context.Log.Run(Run)!.File;
            var earlier = stage.Context.Log.Earlier(file.Run, Run);
            stage.Work(
                Say("replay"),
                () => RunReplays.Of(file.Run, null, earlier).ToArray() is { Length: > 0 } moments
                    ? new RunsEvent.ReplayMade(RunTitle.Of(file.Run), ReplayWords.Lines(file.Run, moments))
                    : new RunsEvent.Told(Say("that run has no reading yet")),
                fault => new RunsEvent.Told(fault));
        }
    }

    /// <summary>Show a screen on the practice log, which is opened for it where it is not open already.</summary>
    internal sealed record Practise(Func<TuiContext, ScreenView> Screen) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage)
        {
            var context = stage.Context;
            if (context.IsPractice)
            {
                stage.Show(Screen(context));
                return;
            }

            if (!PracticeLog.Open(context.Log.Place, context.Clock).Is(out var log, out var trouble))
            {
                stage.Send(new RunsEvent.Told(trouble));
                return;
            }

            using (log)
            {
                stage.Show(Screen(context with { Log = log, IsPractice = true }));
            }
        }
    }

    /// <summary>Ask for a folder and write run files into it.</summary>
    internal sealed record WriteFiles(ImmutableSortedSet<int> Runs) : RunsEffect
    {
        public override void Perform(IStage<RunsEvent> stage)
            => new Export<RunsEvent>(
                PathForm.Runs(),
                (folder, _, _) => Write(stage.Context.Log, folder),
                said => new RunsEvent.Told(said)).Perform(stage);

        private string Write(BenchLog log, string folder)
        {
            Directory.CreateDirectory(folder);
            var count = 0;
            foreach (var number in Runs)
            {
                var run = log.Run(number)!;
                using var stream = new MemoryStream();
                RunFileWriter.Write(run.File, stream);
                count += WholeFile.Write(Path.Combine(folder, RunFileName.Of(run.File)), stream.ToArray(), replace: true) ? 1 : 0;
            }

            return Say($"{count} to {folder}", "export");
        }
    }
}
