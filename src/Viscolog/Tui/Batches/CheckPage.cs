using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Batches;

/// <summary>What the check screen shows: verdict and what to do, then how it came about.</summary>
internal static class CheckPage
{
    /// <summary>Readings of the last step that are shown one by one.</summary>
    private const int MostReadings = 6;

    public static Page Of(CheckState state, Canvas canvas) => Page.Of(canvas, Say("the check"), page => Draw(page, state));

    private static void Draw(Page page, CheckState state)
    {
        page.Add(" " + RunTitle.Of(state.Run.File.Run), Tone.Strong);
        page.Add(
            new Piece(" " + Against(state)),
            new Piece(state.Specifications.Length > 1 ? Say($"   ({state.Chosen + 1} of {state.Specifications.Length})") : "", Tone.Dim));
        page.Add("");
        var scrolled = page.AddScrolled(Head(page, state), state.Passed);
        page.Foot(state.Said.Length > 0 ? state.Said : scrolled, CheckScreen.Keys);
    }

    private static string Against(CheckState state) => state.Current switch
    {
        null => Say("against nothing: the run has no target, and the log no specification"),
        { Body: { } body } asked => Say(
            $"against {asked.Name}: {AdviceWords.Band(body.Band)} at {asked.ReferenceTemperatureInForce.Celsius:0.#} °C"),
        var asked => Say($"against {asked.Name}"),
    };

    /// <summary>Adds the verdict; says what stands below it.</summary>
    private static List<Piece> Head(Page page, CheckState state)
    {
        var lines = new List<Piece>();
        switch (state.Outcome)
        {
            case CheckOutcome.Checked { Check: var check }:
                var tone = check.Verdict switch { Verdict.Accept => Tone.Good, Verdict.Reject => Tone.Bad, _ => Tone.Caution };
                foreach (var line in Paragraph.Of(page.Shown(CheckWords.Headline(check.Verdict)), page.Width - 2))
                {
                    page.Add(new Piece(" " + line, tone));
                }

                foreach (var line in Paragraph.Of(page.Shown(CheckWords.Next(check)), page.Width - 2))
                {
                    page.Add(" " + line);
                }

                page.Add("");
                Row(lines, page.Width, Say("Readings"), Readings(check));
                foreach (var (name, text) in CheckWords.Rows(check, state.Today))
                {
                    Row(lines, page.Width, name, text);
                }

                foreach (var warning in check.Warnings)
                {
                    Row(lines, page.Width, Say("Note", "warning"), CheckRemarks.Of(warning), Tone.Caution);
                }

                if (check.Next is NextStep.Correct { Advice: var advice })
                {
                    Row(lines, page.Width, Say("Safety"), CautionWords.Of(advice.Cautions), Tone.Dim);
                }

                break;
            case CheckOutcome.Refused refused:
                page.Add(" " + Say("It can't be checked."), Tone.Bad);
                Row(lines, page.Width, Say("Why"), CheckRemarks.Of(refused.Reason));
                break;
            default:
                page.Add(new Piece(
                    " " + (state.Fault
                        ?? (state.Current is null ? Say("F8 in the list of runs adds a specification.") : Say("working it out"))),
                    state.Fault is null ? Tone.Dim : Tone.Bad));
                break;
        }

        return lines;
    }

    private static string Readings(BatchCheck check)
    {
        var step = Steps.Of(check.Run)[^1].Readings.Where(r => r.Reading.Value is not null)
            .Select(r => BenchValue.Words(r.Reading.Value!)).ToList();
        var shown = string.Join(", ", step.TakeLast(MostReadings));
        return step.Count switch
        {
            0 => Say("none since the pot was last changed"),
            > MostReadings => Say($"the last {MostReadings} of {step.Count}: {shown}"),
            _ => shown,
        };
    }

    private static void Row(List<Piece> lines, int width, string name, string text, Tone tone = Tone.Plain)
    {
        const int names = 17;
        foreach (var line in Paragraph.Of(PlainText.Clean(text), width - names - 2))
        {
            lines.Add(new(" " + name.PadRight(names) + line, tone));
            name = "";
        }
    }
}
