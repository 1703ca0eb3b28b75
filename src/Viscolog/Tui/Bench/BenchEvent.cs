using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Bench;

/// <summary>What can happen on the bench screen. The set of cases is closed.</summary>
internal abstract record BenchEvent
{
    private BenchEvent()
    {
    }

    /// <summary>An instrument told something.</summary>
    internal sealed record Heard(Viscolog.Feeds.FeedEvent Event) : BenchEvent;

    /// <summary>Enter was pressed on a reading, its wait and a note as typed; an empty wait means the clock's.</summary>
    internal sealed record Typed(string Reading, string Wait, string Note) : BenchEvent;

    /// <summary>The reading that was asked about was typed wrongly.</summary>
    internal sealed record Corrected : BenchEvent;

    /// <summary>
    /// Several lines were pasted: a reading in each, then its wait and a note where they are there, set apart by tabs or semicolons.
    /// </summary>
    internal sealed record Pasted(ImmutableArray<string> Lines) : BenchEvent;

    /// <summary>The advised grams went in.</summary>
    internal sealed record TookAdvised : BenchEvent;

    /// <summary>So many grams of a thickener went in.</summary>
    internal sealed record Poured(string Thickener, Mass Grams) : BenchEvent;

    /// <summary>Base went in.</summary>
    internal sealed record LetDown(Mass Grams) : BenchEvent;

    /// <summary>Water went in.</summary>
    internal sealed record Watered(Mass Grams) : BenchEvent;

    /// <summary>A sample was taken out.</summary>
    internal sealed record TakenOut(Mass Grams) : BenchEvent;

    /// <summary>The stir key was pressed.</summary>
    internal sealed record Stir : BenchEvent;

    /// <summary>Temperature, pH and the like were read, for the next reading.</summary>
    internal sealed record ReadBeside(BenchReadings Readings) : BenchEvent;

    /// <summary>A row is to be void, with what was right instead where that is known.</summary>
    internal sealed record Voided(int Place, string Reason, string Right) : BenchEvent;

    /// <summary>What was said last is to be taken back.</summary>
    internal sealed record TakenBack : BenchEvent;

    /// <summary>What was taken back last is to be said again.</summary>
    internal sealed record SaidAgain : BenchEvent;

    /// <summary>The whole of the advice was called for.</summary>
    internal sealed record Explained : BenchEvent;

    /// <summary>The computer's clock went on by so much more, or less, than time did.</summary>
    internal sealed record ClockJumped(TimeSpan By) : BenchEvent;

    /// <summary>How long the pot has been stirred, or has stood, where the clock can't know.</summary>
    internal sealed record StoodFor(TimeSpan Time) : BenchEvent;

    /// <summary>The screen is about to be left while the pot is being stirred.</summary>
    internal sealed record Leaving : BenchEvent;

    /// <summary>Another target or risk.</summary>
    internal sealed record Aimed(Target? Target, Percentage Risk) : BenchEvent;

    /// <summary>What the run says of itself is to be corrected.</summary>
    internal sealed record Correcting : BenchEvent;

    /// <summary>What the run says of itself was corrected.</summary>
    internal sealed record RunCorrected(Viscolog.RunFiles.RunFile Header) : BenchEvent;

    /// <summary>A paper of the run is to be written.</summary>
    internal sealed record PaperCalled : BenchEvent;

    /// <summary>What became of something that is not logged.</summary>
    internal sealed record Told(string What) : BenchEvent;

    /// <summary>The chosen entry, or else the advice, is to be copied.</summary>
    internal sealed record Copied : BenchEvent;

    /// <summary>Another row was chosen.</summary>
    internal sealed record Moved(int Rows) : BenchEvent;

    /// <summary>The log has it.</summary>
    internal sealed record Logged(LoggedRun Run, BenchChange Change, ChangeWay Way) : BenchEvent;

    /// <summary>The log has it not.</summary>
    internal sealed record NotLogged(string Reason) : BenchEvent;

    /// <summary>Advice came.</summary>
    internal sealed record Advised(BenchAdvice Advice) : BenchEvent;

    /// <summary>A form was called for; null from it where there is nothing to ask.</summary>
    internal sealed record Called(Func<BenchState, Form<BenchEvent>?> Form) : BenchEvent;

    /// <summary>The chart alone was called for.</summary>
    internal sealed record Charted : BenchEvent;

    /// <summary>The check was called for.</summary>
    internal sealed record Checked : BenchEvent;

    /// <summary>Time went by.</summary>
    internal sealed record Ticked : BenchEvent;
}
