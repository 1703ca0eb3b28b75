using MathNet.Numerics.Distributions;

namespace Viscolog.Core.Checking;

/// <summary>
/// The probability that a quantity lies within its limits when a measurement of it is normal: JCGM 106:2012 (Evaluation of measurement
/// data – The role of
/// measurement uncertainty in conformity assessment), clause 7.4, and the acceptance interval that a decision rule makes of it (clause
/// 8.3).
/// </summary>
internal static class Conformity
{
    /// <summary>Readings beyond the present ones that are looked at; nobody takes more.</summary>
    private const int MostMore = 50;

    /// <summary>Φ((high − y)/u) − Φ((low − y)/u).</summary>
    /// <param name="value">What was measured.</param>
    /// <param name="uncertainty">Its standard uncertainty; 0 or more.</param>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit.</param>
    public static double Chance(double value, double uncertainty, double low, double high)
        => uncertainty <= 0
            ? (value >= low && value <= high ? 1 : 0)
            : Math.Clamp(Normal.CDF(0, 1, (high - value) / uncertainty) - Normal.CDF(0, 1, (low - value) / uncertainty), 0, 1);

    /// <summary>The measured values that are accepted; null where none could be at this uncertainty.</summary>
    public static (double Low, double High)? Acceptance(double uncertainty, double low, double high)
    {
        var middle = (low + high) / 2;
        if (Chance(middle, uncertainty, low, high) < DecisionRule.AcceptFrom.Fraction)
        {
            return null;
        }

        var (outside, inside) = (low, middle);
        for (var i = 0; i < 100; i++)
        {
            var between = (outside + inside) / 2;
            (outside, inside) = Chance(between, uncertainty, low, high) < DecisionRule.AcceptFrom.Fraction
                ? (between, inside) : (outside, between);
        }

        // The normal is even, so the guard bands are alike at both limits.
        return (inside, high - (inside - low));
    }

    /// <summary>How many more readings would decide if their mean stays where it is; null where none would.</summary>
    /// <param name="value">The mean.</param>
    /// <param name="variance">Variance of one reading.</param>
    /// <param name="readings">Readings in the mean; above 0.</param>
    /// <param name="shared">Variance that all readings share.</param>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit.</param>
    public static int? MoreReadings(double value, double variance, double readings, double shared, double low, double high)
    {
        for (var more = 1; more <= MostMore; more++)
        {
            if (IsDecided(Chance(value, Math.Sqrt((variance / (readings + more)) + shared), low, high)))
            {
                return more;
            }
        }

        return null;
    }

    /// <summary>Whether a chance accepts or rejects.</summary>
    public static bool IsDecided(double chance) => chance >= DecisionRule.AcceptFrom.Fraction || chance <= DecisionRule.RejectUpTo.Fraction;
}
