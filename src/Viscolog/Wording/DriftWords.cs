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
        => Told(drift, today, drift.IsOld(today) ? Say("; check it again before relying on it")
            : drift.IsBiased ? Say("; clean it and check again; if the bias remains, have it adjusted") : "");

    /// <summary>In a sentence for a customer, who has no use for what is to be done.</summary>
    /// <inheritdoc cref="Of"/>
    public static string Stated(MethodDrift drift, DateOnly today) => Told(drift, today, "");

    private static string Told(MethodDrift drift, DateOnly today, string next)
    {
        var bias = string.Create(Numbers, $"{Math.Abs(100 * double.ExpM1(drift.LnBias)):0.0} %");
        var (method, unsure, ago) = (MethodWords.Of(drift.Condition), 2 * drift.Uncertainty.Percent, Ago(drift, today));
        var with = (drift.Readings == 1 ? Say("with 1 reading") : Say($"with {drift.Readings} readings")) + Pooled(drift);
        return drift.LnBias < 0
            ? Say($"{method}: reads {bias} too low (± {unsure:0.0} %), checked {ago} {with}{next}")
            : Say($"{method}: reads {bias} too high (± {unsure:0.0} %), checked {ago} {with}{next}");
    }

    /// <summary>In a few words.</summary>
    /// <param name="drift">What the oils show.</param>
    /// <param name="today">The day it is asked.</param>
    public static string Brief(MethodDrift drift, DateOnly today)
    {
        var speed = drift.Condition.RevolutionsPerMinute is null ? "" : MethodWords.Of(drift.Condition) + " ";
        var bias = string.Create(
            Numbers, $"{speed}{100 * double.ExpM1(drift.LnBias):+0.0;-0.0;0.0} % ± {drift.Uncertainty.Percent:0.0}");
        return drift.IsOld(today) ? Say($"{bias}, checked {Ago(drift, today)}, overdue") : Say($"{bias}, checked {Ago(drift, today)}");
    }

    /// <summary>The readings of certified oils, a row each.</summary>
    public static TextTable Table(IEnumerable<(int Number, OilReading Reading, string? Void)> oils)
    {
        var table = new TextTable(
            Say("no."), Say("date"), Say("method"), Say("oil"), Say("certified", "oil"), Say("read mPa·s"), Say("off", "oil"),
            Say("void", "oil"));
        foreach (var (number, reading, reason) in oils)
        {
            table.Add(
                number.ToString(CultureInfo.InvariantCulture),
                reading.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                MethodWords.Of(reading.Condition),
                PlainText.Shorten(reading.Oil.Name, 20),
                Shown.Limit(reading.Oil.Viscosity.MilliPascalSeconds),
                Shown.Limit(reading.Read.MilliPascalSeconds),
                string.Create(Numbers, $"{100 * double.ExpM1(reading.Deviation.Ln):+0.0;-0.0;0.0} %"),
                PlainText.Shorten(reason ?? "", 20));
        }

        return table;
    }

    private static string Pooled(MethodDrift drift)
        => drift.Days == 1 ? "" : Say($" on {drift.Days} days since {drift.Since:yyyy-MM-dd}");

    private static string Ago(MethodDrift drift, DateOnly today) => drift.DaysSince(today) switch
    {
        0 => Say("today"),
        1 => Say("yesterday"),
        var days => Say($"{days} days ago"),
    };
}
