using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tui.Papers;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.RunHeaders;

namespace Viscolog.Tui.Bench;

/// <summary>What the bench screen alone asks the world to do. The set of cases is closed.</summary>
internal abstract record BenchEffect : IEffect<BenchEvent>
{
    private BenchEffect()
    {
    }

    public abstract void Perform(IStage<BenchEvent> stage);

    /// <summary>Log a change, take it back or say it again.</summary>
    internal sealed record Log(int Run, BenchChange Change, ChangeWay Way) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage)
        {
            var log = stage.Context.Log;
            var outcome = Change.Log(log, Run, Way);
            stage.Send(outcome is WriteOutcome.Saved
                ? new BenchEvent.Logged(log.Run(Run)!, Change, Way)
                : new BenchEvent.NotLogged(TuiContext.Words(outcome, Change.What)));
        }
    }

    /// <summary>Ask for corrections of what the run says of itself.</summary>
    internal sealed record AskAbout(LoggedRun Run) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage)
        {
            if (stage.Ask(RunForm.Of(stage.Context.Log.Materials(), Run.File)) is { } header)
            {
                stage.Send(new BenchEvent.RunCorrected(header));
            }
        }
    }

    /// <summary>Ask for a paper of the run and write it.</summary>
    internal sealed record WritePaper(LoggedRun Run, ImmutableArray<Run> Earlier) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage)
        {
            if (stage.Ask(RunPapers.Form(Run, Earlier, stage.Context.Today)) is { } paper)
            {
                RunPapers.Export<BenchEvent>(
                    paper.Write,
                    Say("Write a paper"),
                    RunPapers.NameOf(Run, paper.Name),
                    said => new BenchEvent.Told(said))
                    .Perform(stage);
            }
        }
    }

    /// <summary>Work out advice.</summary>
    internal sealed record Advise(Run Run, Percentage Risk, ImmutableArray<Run> Earlier) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage)
            => stage.Work(
                Say("advice"),
                () => new BenchEvent.Advised(BenchAdvisor.Of(this)),
                fault => new BenchEvent.Advised(new(null, fault, null)));
    }
}
