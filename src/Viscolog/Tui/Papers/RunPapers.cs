using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Batches;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Labels;
using Viscolog.Reports;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Papers;

/// <summary>
/// The papers of a run: its report, the sheet of a batch of another size, the label of its pot, the certificate of a check.
/// </summary>
internal static class RunPapers
{
    /// <summary>Asks for which paper, and gives what writes it.</summary>
    public static Form<AskedPaper> Form(LoggedRun run, ImmutableArray<Run> earlier, DateOnly today) => new(
        Say("Write a paper"),
        Say(
            "The report covers the whole run. The batch sheet says what to weigh and add for a pot of another size. "
            + "The label is for the pot."),
        [
            new(Say("paper"), Papers[0].Word) { Choices = [.. Papers.Select(p => p.Word)] },
            new(Say("batch of"), run.File.Run.BaseMass.Grams.ToString("R", Numbers), Say("g, kg, mL or L; for the sheet")),
            new(Say("labels on"), LabelSheet.All[0].Name, Say("sheet: page, across x down"))
            {
                Choices = [.. LabelSheet.All.Select(s => s.Name)],
            },
            new(Say("from place"), "1", Say("first label on the sheet")),
        ],
        texts => Find(texts[0].Trim()) switch
        {
            "report" => Asked("report", Writer(
                RunReport.Of(
                    run.File,
                    run.Rows,
                    new StudyRequest(run.File.Run) { Band = run.File.Run.Target?.Band, History = earlier },
                    today))),
            "batch sheet" => Sheet(run.File.Run, earlier, texts[1], today),
            "label" => Labels(run.File, texts[2], texts[3], today),
            _ => FormAnswer<AskedPaper>.Wrong(0, Say($"one of {string.Join(", ", Papers.Select(p => p.Word))}")),
        });

    /// <summary>Asks where a paper goes and writes it.</summary>
    public static Export<TEvent> Export<TEvent>(PaperWriter write, string title, string of, Func<string, TEvent> told)
        where TEvent : class
        => new(PathForm.Paper(title, of), (path, replace, _) => write(path, replace), told);

    /// <summary>Writes a document.</summary>
    public static PaperWriter Writer(Paper paper) => (path, replace) => PaperFile.Write(paper, path, replace);

    /// <summary>The certificate of a check.</summary>
    public static Paper Certificate(LoggedRun run, BatchCheck check, ImmutableArray<Run> earlier, DateOnly today)
    {
        var study = Study.Of(new(check.Run) { Band = check.Body?.Band, History = earlier }) as StudyOutcome.Made;
        return BatchCertificate.Of(run.File with { Run = check.Run }, run.Rows, check, study?.Study, today);
    }

    /// <summary>A file's name for a paper of a run, without its ending.</summary>
    public static string NameOf(LoggedRun run, string paper) => $"{RunFileName.Plain(run.File.Run.Name ?? "run")}-{paper}";

    /// <summary>The papers by name and in words.</summary>
    private static ImmutableArray<(string Name, string Word)> Papers
        => [("report", Say("report")), ("batch sheet", Say("batch sheet")), ("label", Say("label"))];

    /// <summary>The name of the paper whose name or word begins so; null for none.</summary>
    private static string? Find(string text) => Papers.FirstOrDefault(
        p => p.Word.StartsWith(text, StringComparison.OrdinalIgnoreCase) || p.Name.StartsWith(text, StringComparison.OrdinalIgnoreCase))
        .Name;

    private static FormAnswer<AskedPaper> Asked(string name, PaperWriter write) => FormAnswer<AskedPaper>.Of(new(name, write));

    private static FormAnswer<AskedPaper> Sheet(Run run, ImmutableArray<Run> earlier, string size, DateOnly today)
    {
        if (TypedSize.Read(size, out var error) is not { } wanted)
        {
            return FormAnswer<AskedPaper>.Wrong(1, error!);
        }

        var outcome = BatchPlans.Of(new(run, wanted) { Band = run.Target?.Band, History = earlier });
        return outcome is BatchOutcome.Planned { Plan: var plan }
            ? Asked("sheet", Writer(BatchSheet.Of(plan, null, today)))
            : FormAnswer<AskedPaper>.Wrong(0, BatchWords.Of(((BatchOutcome.Refused)outcome).Reason));
    }

    private static FormAnswer<AskedPaper> Labels(RunFile file, string name, string place, DateOnly today)
    {
        if (LabelSheet.Find(name) is not { } sheet)
        {
            return FormAnswer<AskedPaper>.Wrong(2, Say($"one of {string.Join(", ", LabelSheet.All.Select(s => s.Name))}"));
        }

        return int.TryParse(place, NumberStyles.None, CultureInfo.InvariantCulture, out var start) && start >= 1 && start <= sheet.Count
            ? Asked("label", new LabelOrder(Label.OfPot(file, today), sheet) { Start = start }.Write)
            : FormAnswer<AskedPaper>.Wrong(3, Say($"a whole number from 1 to {sheet.Count}"));
    }
}
