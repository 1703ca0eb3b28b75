using System.Globalization;
using Viscolog.Core.Measuring;

namespace Viscolog.Cli.Json;

/// <summary>How a method reads certified oils.</summary>
internal sealed record DriftAnswer(string Method, double? Rpm, double BiasPct, double UncertaintyPct, bool TakenOut, string LastChecked, int Readings, bool Overdue)
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
