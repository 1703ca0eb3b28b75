using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Bench;

/// <summary>What the bench screen alone asks the world to do. The set of cases is closed.</summary>
internal abstract record BenchEffect : IEffect<BenchEvent>
{
    private BenchEffect()
    {
    }

    public abstract void Perform(IStage<BenchEvent> stage);

    private static void Report(IStage<BenchEvent> stage, int run, WriteOutcome outcome, string said) => stage.Send(outcome switch
    {
        WriteOutcome.Saved => new BenchEvent.Logged(stage.Context.Log.Run(run)!, said),
        _ => new BenchEvent.NotLogged(TuiContext.Words(outcome, said)),
    });

    /// <summary>Log a row.</summary>
    internal sealed record AddRow(int Run, FileRow Row, string Said) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage) => Report(stage, Run, stage.Context.Log.Add(Run, Row), Said);
    }

    /// <summary>Make a row void; put another in its place where there is one.</summary>
    internal sealed record VoidRow(int Run, int Row, string Reason, FileRow? By, string Said) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage)
        {
            var log = stage.Context.Log;
            Report(stage, Run, By is { } by ? log.Replace(Run, Row, Reason, by) : log.Void(Run, Row, Reason), Said);
        }
    }

    /// <summary>State the header anew.</summary>
    internal sealed record Restate(int Run, RunFile Header, string Said) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage) => Report(stage, Run, stage.Context.Log.Restate(Run, Header), Said);
    }

    /// <summary>Work out advice.</summary>
    internal sealed record Advise(Run Run, Percentage Risk, ImmutableArray<Run> Earlier) : BenchEffect
    {
        public override void Perform(IStage<BenchEvent> stage)
            => stage.Work(
                "advice",
                () => new BenchEvent.Advised(BenchAdvisor.Of(this)),
                fault => new BenchEvent.Advised(new(null, fault, null)));
    }
}
