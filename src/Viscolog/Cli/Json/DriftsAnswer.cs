using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Store;

namespace Viscolog.Cli.Json;

/// <summary>How the methods read certified oils, as <c>viscolog.drift/1</c>.</summary>
internal sealed record DriftsAnswer(IReadOnlyList<DriftAnswer> Methods, IReadOnlyList<OilAnswer> Readings)
{
    public string Schema { get; } = "viscolog.drift/1";
}

/// <summary>How a method reads certified oils.</summary>
internal sealed record DriftAnswer(
    string Method, double? Rpm, double BiasPct, double UncertaintyPct, bool TakenOut, string LastChecked, int Readings, bool Overdue)
{
    public static DriftAnswer Of(MethodDrift drift, DateOnly today) => new(
        drift.Condition.Method.Id,
        drift.Condition.RevolutionsPerMinute,
        Rounded.Four(100 * double.ExpM1(drift.LnBias)),
        Rounded.Four(drift.Uncertainty.Percent),
        drift.IsBiased,
        drift.LastChecked.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        drift.Readings,
        drift.IsOld(today));
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
