using MathNet.Numerics.Distributions;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>
/// The probability that a quantity lies within its limits given a measurement of it: JCGM 106:2012 (Evaluation of measurement data – The
/// role of measurement uncertainty in conformity assessment), clause 7.4, and the acceptance interval that a decision rule makes of it
/// (clause 8.3). Where the uncertainty itself is known from few readings the law is Student's t (JCGM 100:2008, G.3).
/// </summary>
internal static class Conformity
{
    /// <summary>Readings beyond the present ones that are looked at; nobody takes more.</summary>
    private const int MostMore = 50;

    /// <summary>From so many degrees of freedom on Student's t is the normal law to every digit that is shown.</summary>
    private const double AsGoodAsNormal = 1e5;

    /// <summary>T((high − y)/u) − T((low − y)/u), T the distribution function of Student's t.</summary>
    /// <param name="value">What was measured.</param>
    /// <param name="uncertainty">Its standard uncertainty; 0 or more.</param>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit.</param>
    /// <param name="freedom">Degrees of freedom of the uncertainty; above 0, infinite for the normal law.</param>
    public static double Chance(double value, double uncertainty, double low, double high, double freedom)
        => uncertainty <= 0
            ? (value >= low && value <= high ? 1 : 0)
            : Math.Clamp(Below((high - value) / uncertainty, freedom) - Below((low - value) / uncertainty, freedom), 0, 1);

    /// <summary>
    /// Degrees of freedom of a sum of independent parts by the Welch–Satterthwaite formula (JCGM 100:2008, G.4.1); infinite where no part
    /// has few.
    /// </summary>
    /// <param name="parts">Standard uncertainties with their degrees of freedom.</param>
    public static double EffectiveFreedom(IReadOnlyCollection<(double Size, double Freedom)> parts)
    {
        var variance = parts.Sum(p => p.Size * p.Size);
        var doubt = parts.Sum(p => Math.Pow(p.Size, 4) / p.Freedom);
        return doubt > 0 ? variance * variance / doubt : double.PositiveInfinity;
    }

    /// <summary>The factor by which a standard uncertainty is multiplied for an interval either side of the value.</summary>
    /// <param name="level">The chance that the interval holds the value.</param>
    /// <param name="freedom">Degrees of freedom; above 0.</param>
    public static double Coverage(Percentage level, double freedom)
    {
        var below = (1 + level.Fraction) / 2;
        return freedom > AsGoodAsNormal ? Normal.InvCDF(0, 1, below) : StudentT.InvCDF(0, 1, freedom, below);
    }

    /// <summary>The measured values that are accepted; null where none could be at this uncertainty.</summary>
    public static (double Low, double High)? Acceptance(double uncertainty, double low, double high, double freedom)
    {
        var middle = (low + high) / 2;
        if (Chance(middle, uncertainty, low, high, freedom) < DecisionRule.AcceptFrom.Fraction)
        {
            return null;
        }

        var (outside, inside) = (low, middle);
        for (var i = 0; i < 100; i++)
        {
            var between = (outside + inside) / 2;
            (outside, inside) = Chance(between, uncertainty, low, high, freedom) < DecisionRule.AcceptFrom.Fraction
                ? (between, inside) : (outside, between);
        }

        // The law is even, so the guard bands are alike at both limits.
        return (inside, high - (inside - low));
    }

    /// <summary>How many more readings would decide; null where none would.</summary>
    /// <param name="chanceAfter">The chance after so many more.</param>
    public static int? MoreReadings(Func<int, double> chanceAfter)
    {
        for (var more = 1; more <= MostMore; more++)
        {
            if (IsDecided(chanceAfter(more)))
            {
                return more;
            }
        }

        return null;
    }

    /// <summary>Whether a chance accepts or rejects.</summary>
    public static bool IsDecided(double chance) => chance >= DecisionRule.AcceptFrom.Fraction || chance <= DecisionRule.RejectUpTo.Fraction;

    private static double Below(double t, double freedom)
        => freedom > AsGoodAsNormal ? Normal.CDF(0, 1, t) : StudentT.CDF(0, 1, freedom, t);
}
