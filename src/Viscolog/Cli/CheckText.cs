using Viscolog.Core.Checking;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>A check as a person reads it.</summary>
internal static class CheckText
{
    public static void Write(CallOutput terminal, BatchCheck check, DateOnly today)
    {
        terminal.Line($"{RunTitle.Of(check.Run)} · {check.Specification.Name}{(check.Body is { } b ? ": " + AdviceWords.Band(b.Band) : "")}");
        terminal.Line();
        terminal.Emphasized("  " + CheckWords.Headline(check.Verdict));
        Row(terminal, "", CheckWords.Next(check.Next));
        terminal.Line();
        foreach (var (name, text) in CheckWords.Rows(check, today))
        {
            Row(terminal, name, text);
        }

        foreach (var warning in check.Warnings)
        {
            Row(terminal, "Note", warning);
        }

        if (check.Next is NextStep.Correct { Advice: var advice })
        {
            terminal.Line();
            Row(terminal, "Safety", string.Join(' ', advice.Cautions));
        }
    }

    private static void Row(CallOutput terminal, string name, string text)
    {
        var indent = name.Length == 0 ? "  " : "  " + name.PadRight(17);
        foreach (var line in Paragraph.Of(text, terminal.Width - indent.Length))
        {
            terminal.Line(indent + line);
            indent = new(' ', indent.Length);
        }
    }
}
