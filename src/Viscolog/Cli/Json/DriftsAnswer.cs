using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Store.Copy;

namespace Viscolog.Cli.Json;

/// <summary>How the methods read certified oils, as <c>viscolog.drift/1</c>.</summary>
internal sealed record DriftsAnswer(IReadOnlyList<DriftAnswer> Methods, IReadOnlyList<OilAnswer> Readings)
{
    public string Schema { get; } = "viscolog.drift/1";
}

/// <summary>How a method reads certified oils.</summary>
internal sealed record DriftAnswer
{
    public required string Method { get; init; }
    public required double? Rpm { get; init; }
    public required double BiasPct { get; init; }
    public required double UncertaintyPct { get; init; }
    public required bool TakenOut { get; init; }
    public required string LastChecked { get; init; }
    public required int Readings { get; init; }
    public required bool Overdue { get; init; }

    /// <summary>The first day whose readings are in it.</summary>
    public required string Since { get; init; }

    public static DriftAnswer Of(MethodDrift drift, DateOnly today) => new()
    {
        Method = drift.Condition.Method.Id,
        Rpm = drift.Condition.RevolutionsPerMinute,
        BiasPct = Rounded.Four(100 * double.ExpM1(drift.LnBias)),
        UncertaintyPct = Rounded.Four(drift.Uncertainty.Percent),
        TakenOut = drift.IsBiased,
        LastChecked = drift.LastChecked.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        Readings = drift.Readings,
        Overdue = drift.IsOld(today),
        Since = drift.Since.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
    };
}

/// <summary>A reading of a certified oil.</summary>
/// <param name="Number">Its number in the log.</param>
/// <param name="Is">The cells of its row in an oils file.</param>
/// <param name="DeviationPct">How far it read off, brought to the certificate's temperature.</param>
/// <param name="Void">Why it counts no more.</param>
internal sealed record OilAnswer(int Number, IReadOnlyDictionary<string, string> Is, double DeviationPct, string? Void)
{
    public static OilAnswer Of(LoggedOil oil)
        => new(oil.Number, oil.Row.Cells, Rounded.Four(100 * double.ExpM1(oil.Row.Reading.Deviation.Ln)), oil.Row.Void);
}
