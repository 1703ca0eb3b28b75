using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Papers;
using Viscolog.Tui.Pattern;
using CheckStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Batches.CheckState, Viscolog.Tui.Batches.CheckEvent>;

namespace Viscolog.Tui.Batches;

/// <summary>The check screen as a machine.</summary>
internal static class CheckSteps
{
    /// <summary>The state of a check that is opened, asked for.</summary>
    public static CheckStep Open(LoggedRun run, BenchKnowledge bench, ImmutableArray<Run> earlier, DateOnly today)
        => Ask(CheckState.Of(run, bench, today) with { Earlier = earlier });

    public static CheckStep Next(CheckState state, CheckEvent @event, DateTimeOffset now) => @event switch
    {
        CheckEvent.Chose chose => Choose(state, chose.By),
        CheckEvent.Scrolled scrolled => state with { Passed = state.Passed.By(scrolled.By) },
        CheckEvent.OilCalled => new CheckStep(
            state,
            new ReadOil<CheckEvent>(
                state.Run.File.Run.MethodInForce,
                (outcome, _) => new CheckEvent.OilLogged(outcome is WriteOutcome.Saved))),
        CheckEvent.OilLogged logged => logged.IsSaved ? Ask(state) : state,
        CheckEvent.CertificateCalled => Certify(state),
        CheckEvent.Told told => state with { Said = told.What },
        CheckEvent.TrendCalled => new CheckStep(state, new Show<CheckEvent>(context => TrendScreen.On(context, state.Current?.Name))),
        CheckEvent.Answered answered => state with { Outcome = answered.Outcome, Fault = answered.Fault },
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static CheckStep Choose(CheckState state, int by)
    {
        var chosen = Math.Clamp(state.Chosen + by, 0, Math.Max(0, state.Specifications.Length - 1));
        return chosen == state.Chosen ? state : Ask(state with { Chosen = chosen, Passed = default });
    }

    private static CheckStep Certify(CheckState state) => state.Outcome is CheckOutcome.Checked { Check: var check }
        ? new CheckStep(state, RunPapers.Export<CheckEvent>(
            RunPapers.Writer(RunPapers.Certificate(state.Run, check, state.Earlier, state.Today)),
            Say("Write the certificate"),
            RunPapers.NameOf(state.Run, "certificate"),
            said => new CheckEvent.Told(said)))
        : state with { Said = Say("there is no verdict to certify") };

    private static CheckStep Ask(CheckState state)
    {
        var asked = state with { Outcome = null, Fault = null };
        return state.Current is not { } specification
            ? asked
            : new CheckStep(asked, new WorkOutCheck(state.Run.File.Run, specification, state.Earlier, state.Today));
    }
}

/// <summary>What can happen on the check screen. The set of cases is closed.</summary>
internal abstract record CheckEvent
{
    private CheckEvent()
    {
    }

    /// <summary>Another specification was chosen.</summary>
    internal sealed record Chose(int By) : CheckEvent;

    /// <summary>The findings were moved.</summary>
    internal sealed record Scrolled(int By) : CheckEvent;

    /// <summary>A certified oil is to be logged.</summary>
    internal sealed record OilCalled : CheckEvent;

    /// <summary>A certified oil was logged, or not.</summary>
    internal sealed record OilLogged(bool IsSaved) : CheckEvent;

    /// <summary>The certificate is to be written.</summary>
    internal sealed record CertificateCalled : CheckEvent;

    /// <summary>What became of it.</summary>
    internal sealed record Told(string What) : CheckEvent;

    /// <summary>The product's trend was called for.</summary>
    internal sealed record TrendCalled : CheckEvent;

    /// <summary>The check was worked out, or a fault of ours came in its way.</summary>
    internal sealed record Answered(CheckOutcome? Outcome, string? Fault) : CheckEvent;
}

/// <summary>Works a run's check out; the log itself is read on the screen's own thread.</summary>
internal sealed record WorkOutCheck(Run Run, Specification Specification, ImmutableArray<Run> Earlier, DateOnly Today) : IEffect<CheckEvent>
{
    public void Perform(IStage<CheckEvent> stage)
    {
        var request = BenchKnowledge.Of(stage.Context.Log).Request(Run, Specification, Earlier, Today);
        stage.Work(
            Say("check"), () => new CheckEvent.Answered(BatchChecks.Of(request), null), fault => new CheckEvent.Answered(null, fault));
    }
}
