using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>How a method reads certified oils, in words.</summary>
internal static class DriftWords
{
    /// <summary>In a sentence, with what to do.</summary>
    /// <param name="drift">What the oils show.</param>
    /// <param name="today">The day it is asked.</param>
    public static string Of(MethodDrift drift, DateOnly today)
    {
        var next = drift.IsOld(today) ? "; check it again before relying on it"
            : drift.IsBiased ? "; clean it and check again; if the bias remains, have it adjusted" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{MethodWords.Of(drift.Condition)}: reads "
            + $"{Math.Abs(100 * double.ExpM1(drift.LnBias)):0.0} % too {(drift.LnBias < 0 ? "low" : "high")} "
            + $"(± {2 * drift.Uncertainty.Percent:0.0} %), checked {Ago(drift, today)} with {drift.Readings} "
            + $"{(drift.Readings == 1 ? "reading" : "readings")}{Pooled(drift)}{next}");
    }

    /// <summary>In a few words.</summary>
    /// <param name="drift">What the oils show.</param>
    /// <param name="today">The day it is asked.</param>
    public static string Brief(MethodDrift drift, DateOnly today)
    {
        var speed = drift.Condition.RevolutionsPerMinute is null ? "" : MethodWords.Of(drift.Condition) + " ";
        return string.Create(CultureInfo.InvariantCulture, $"{speed}{100 * double.ExpM1(drift.LnBias):+0.0;-0.0;0.0} % ± "
            + $"{drift.Uncertainty.Percent:0.0}, checked {Ago(drift, today)}{(drift.IsOld(today) ? ", overdue" : "")}");
    }

    /// <summary>The readings of certified oils, a row each.</summary>
    public static TextTable Table(IEnumerable<(int Number, OilReading Reading, string? Void)> oils)
    {
        var table = new TextTable("no.", "date", "method", "oil", "certified", "read mPa·s", "off", "void");
        foreach (var (number, reading, reason) in oils)
        {
            table.Add(
                number.ToString(CultureInfo.InvariantCulture),
                reading.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                MethodWords.Of(reading.Condition),
                PlainText.Shorten(reading.Oil.Name, 20),
                Shown.Limit(reading.Oil.Viscosity.MilliPascalSeconds),
                Shown.Limit(reading.Read.MilliPascalSeconds),
                FormattableString.Invariant($"{100 * double.ExpM1(reading.Deviation.Ln):+0.0;-0.0;0.0} %"),
                PlainText.Shorten(reason ?? "", 20));
        }

        return table;
    }

    private static string Pooled(MethodDrift drift)
        => drift.Days == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" on {drift.Days} days since {drift.Since:yyyy-MM-dd}");

    private static string Ago(MethodDrift drift, DateOnly today) => drift.DaysSince(today) switch
    {
        0 => "today",
        1 => "yesterday",
        var days => string.Create(CultureInfo.InvariantCulture, $"{days} days ago"),
    };
}
