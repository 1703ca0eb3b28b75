using System.Text.Json.Serialization;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;

namespace Viscolog.Cli.Json;

/// <summary>The list of runs, as <c>viscolog.runs/1</c>.</summary>
internal sealed record RunsAnswer(IReadOnlyList<RunsAnswer.Run> Runs) : Answer("viscolog.runs/1")
{
    /// <summary>One run.</summary>
    internal sealed record Run
    {
        public required string Id { get; init; }
        public required int Number { get; init; }
        public required string? Name { get; init; }
        public required string? Base { get; init; }
        public required string? Lot { get; init; }
        public required IReadOnlyList<string> Thickeners { get; init; }
        public required int Entries { get; init; }
        public required int Voided { get; init; }
        public required int Readings { get; init; }
        public required string Last { get; init; }

        public static Run Of(RunSummary run)
            => new()
            {
                Id = run.Id.ToString(),
                Number = run.Number,
                Name = run.Header.Name,
                Base = run.Header.Base.Name,
                Lot = run.Header.Lot,
                Thickeners = run.Thickeners,
                Entries = run.Entries,
                Voided = run.Voided,
                Readings = run.Readings,
                Last = RunFiles.FileTime.Show(run.Last),
            };
    }
}

/// <summary>A logged run, as <c>viscolog.run/1</c>.</summary>
internal sealed record RunAnswer() : Answer("viscolog.run/1")
{
    public required string Id { get; init; }
    public required int Number { get; init; }
    public string? Name { get; init; }

    /// <summary>The header, lines as in a run file.</summary>
    public required IReadOnlyList<string> Header { get; init; }

    /// <summary>The rows, made while they are gone through.</summary>
    public required IEnumerable<Entry> Entries { get; init; }

    public static RunAnswer Of(StreamedRun logged) => new()
    {
        Id = logged.Header.Id.ToString()!,
        Number = logged.Number,
        Name = logged.Header.Run.Name,
        Header = [.. HeaderText.Of(logged.Header)],
        Entries = EntriesOf(logged),
    };

    private static IEnumerable<Entry> EntriesOf(StreamedRun logged)
    {
        var run = logged.Header.Run;
        var pot = Pot.With(run.BaseMass);
        foreach (var (number, row, _) in logged.Rows)
        {
            pot = row.Entries().Aggregate(pot, run.After);
            yield return new(
                number, run.Thickeners.ToDictionary(t => t.Name, t => Rounded.Four(pot.DoseOf(t.Name).Percent), StringComparer.Ordinal),
                row);
        }
    }

    /// <summary>One row.</summary>
    /// <param name="Row">Its number in the run.</param>
    /// <param name="DosesPct">The dose of each thickener in the pot after it.</param>
    /// <param name="Is">What it says; names as the columns of a run file.</param>
    internal sealed record Entry(int Row, IReadOnlyDictionary<string, double> DosesPct, [property: JsonPropertyName("is")] FileRow Is);
}

/// <summary>A comparison of thickeners as <c>viscolog.compare/1</c>.</summary>
internal sealed record CompareAnswer(
    string Base, double TargetMpas, CompareAnswer.Ends? StringMm, IReadOnlyList<CompareAnswer.One> Candidates,
    IReadOnlyList<string> Warnings) : Answer("viscolog.compare/1")
{
    /// <summary>A median with the interval that holds 9 times in 10; no high end where it lies beyond the range.</summary>
    internal sealed record Value(double Median, double Low, double? High)
    {
        public static Value? Of(Spread? spread) => spread is null
            ? null
            : new(Rounded.Four(spread.Median), Rounded.Four(spread.Low), spread.High is { } high ? Rounded.Four(high) : null);
    }

    /// <summary>The string wanted.</summary>
    internal sealed record Ends(double Low, double High);

    /// <summary>A thickener or a pair.</summary>
    internal sealed record One(
        IReadOnlyList<string> Thickeners, int Runs, double ChanceReachedPct, Value? DosePct, Value? CostPerKg, Value? WaterPct)
    {
        public static One Of(Contender contender) => new(
            [.. contender.Thickeners.Select(t => t.Name)], contender.Runs, Math.Round(contender.ChanceReached.Percent, 1),
            Value.Of(contender.Dose), Value.Of(contender.Cost), Value.Of(contender.Water));
    }

    public static CompareAnswer Of(
        string @base, ViscosityBand body, StringBand? strings, IEnumerable<Contender> contenders, IReadOnlyList<string> warnings)
        => new(
        @base, Rounded.Four(body.Aim.MilliPascalSeconds), strings is null
            ? null
            : new(strings.Low.Millimeters, strings.High.Millimeters), [.. contenders.Select(One.Of)], warnings);
}
