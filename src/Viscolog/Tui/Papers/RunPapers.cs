using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Batches;
using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Reports;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Papers;

/// <summary>The papers of a run: its report, the sheet of a batch of another size, the certificate of a check.</summary>
internal static class RunPapers
{
    /// <summary>A batch of less than a gram can not be dosed.</summary>
    private static readonly NumberRange SizeRange = NumberRange.Grams with { Least = 1 };

    /// <summary>Asks for which paper, and writes it.</summary>
    public static Form<Paper> Form(LoggedRun run, ImmutableArray<Run> earlier, DateOnly today) => new(
        "Write a paper",
        "The report covers the whole run. The batch sheet says what to weigh and add for a pot of another size.",
        [
            new("paper", Papers[0]) { Choices = Papers },
            new("batch of", FileNumbers.Show(run.File.Run.BaseMass.Grams), "g, kg, mL or L; for the sheet"),
        ],
        texts => Papers.FirstOrDefault(p => p.StartsWith(texts[0].Trim(), StringComparison.OrdinalIgnoreCase)) switch
        {
            "report" => FormAnswer<Paper>.Of(
                RunReport.Of(run.File, run.Rows, new StudyRequest(run.File.Run) { Band = run.File.Run.Target?.Band, History = earlier }, today)),
            "batch sheet" => Sheet(run.File.Run, earlier, texts[1], today),
            _ => FormAnswer<Paper>.Wrong(0, $"one of {string.Join(", ", Papers)}"),
        });

    /// <summary>Asks where a paper goes and writes it.</summary>
    public static Export<TEvent> Export<TEvent>(Paper paper, string title, string of, Func<string, TEvent> told)
        where TEvent : class
        => new(PathForm.Paper(title, of), (path, replace, _) => PaperFile.Write(paper, path, replace), told);

    /// <summary>The certificate of a check.</summary>
    public static Paper Certificate(LoggedRun run, BatchCheck check, ImmutableArray<Run> earlier, DateOnly today)
    {
        var study = Study.Of(new(check.Run) { Band = check.Body?.Band, History = earlier }) as StudyOutcome.Made;
        return BatchCertificate.Of(run.File with { Run = check.Run }, run.Rows, check, study?.Study, today);
    }

    /// <summary>A file's name for a paper of a run, without its ending.</summary>
    public static string NameOf(LoggedRun run, string paper) => $"{RunFileName.Plain(run.File.Run.Name ?? "run")}-{paper}";

    private static ImmutableArray<string> Papers { get; } = ["report", "batch sheet"];

    private static FormAnswer<Paper> Sheet(Run run, ImmutableArray<Run> earlier, string size, DateOnly today)
    {
        if (Size(size, out var error) is not { } wanted)
        {
            return FormAnswer<Paper>.Wrong(1, error!);
        }

        var outcome = BatchPlans.Of(new(run, wanted) { Band = run.Target?.Band, History = earlier });
        return outcome is BatchOutcome.Planned { Plan: var plan }
            ? FormAnswer<Paper>.Of(BatchSheet.Of(plan, null, today))
            : FormAnswer<Paper>.Wrong(0, BatchWords.Of(((BatchOutcome.Refused)outcome).Reason));
    }

    /// <summary>A size in grams or, where a unit of volume stands behind it, in millilitres.</summary>
    private static BatchSize? Size(string text, out string? error)
    {
        if (TypedNumber.Read(text, SizeRange, out error) is { } grams)
        {
            return new BatchSize.OfMass(Mass.FromGrams(grams));
        }

        var reason = error;
        if (TypedNumber.Read(text, SizeRange with { Unit = "mL" }, out error) is { } millilitres)
        {
            return new BatchSize.OfVolume(Volume.FromMilliliters(millilitres));
        }

        error = reason;
        return null;
    }
}
