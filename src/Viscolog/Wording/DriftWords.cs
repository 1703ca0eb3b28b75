using System.Globalization;
using Viscolog.Core.Measuring;

namespace Viscolog.Wording;

/// <summary>How a method reads certified oils, in words.</summary>
internal static class DriftWords
{
    /// <summary>In a few words.</summary>
    /// <param name="drift">What the oils show.</param>
    /// <param name="today">The day it is asked.</param>
    public static string Brief(MethodDrift drift, DateOnly today)
    {
        var speed = drift.Condition.RevolutionsPerMinute is null ? "" : drift.Condition.Words + " ";
        return string.Create(CultureInfo.InvariantCulture, $"{speed}{100 * double.ExpM1(drift.LnBias):+0.0;-0.0;0.0} % ± "
            + $"{drift.Uncertainty.Percent:0.0}, checked {MethodDrift.Ago(drift.DaysSince(today))}")
            + (drift.IsOld(today) ? ", overdue" : "");
    }
}
