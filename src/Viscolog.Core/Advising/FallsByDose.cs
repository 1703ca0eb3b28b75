using System.Collections.Immutable;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Whether a quantity falls as its thickener goes in.</summary>
internal static class FallsByDose
{
    /// <summary>A fall counts from so many standard errors of the difference on (a rule of this project).</summary>
    private const double Sure = 3;

    /// <summary>What the quantity was at the last doses of its thickener, where it fell; null where it did not, or not surely.</summary>
    /// <param name="steps">The steps.</param>
    /// <param name="quantity">The quantity.</param>
    /// <param name="repeatability">What one reading of it scatters by, in ln units.</param>
    /// <remarks>Steps between which the dose of the other thickener rose or base went in are not compared.</remarks>
    public static ImmutableArray<double>? TwiceInARow(ImmutableArray<EvidenceStep> steps, Quantity quantity, double repeatability)
        => Falling(steps, quantity, repeatability) is { Values: { Length: >= 3 } values } ? values : null;

    /// <summary>The same where it fell once, with two readings at either end or more.</summary>
    /// <param name="steps">The steps.</param>
    /// <param name="quantity">The quantity.</param>
    /// <param name="repeatability">What one reading of it scatters by, in ln units.</param>
    public static ImmutableArray<double>? Repeated(ImmutableArray<EvidenceStep> steps, Quantity quantity, double repeatability)
        => Falling(steps, quantity, repeatability) is { Values: { Length: 2 } values, Readings: >= 2 } ? values : null;

    /// <summary>The values of the falls that the last step ends, and the fewest readings of one of them.</summary>
    private static (ImmutableArray<double> Values, int Readings) Falling(
        ImmutableArray<EvidenceStep> steps, Quantity quantity, double repeatability)
    {
        var read = steps.Select(s => (Step: s, Lns: Lns(s, quantity))).Where(s => s.Lns.Length > 0).ToArray();
        var values = new List<double>();
        var readings = int.MaxValue;
        for (var i = read.Length - 1; i >= 0; i--)
        {
            var (step, lns) = read[i];
            if (i < read.Length - 1)
            {
                var (later, after) = read[i + 1];
                var error = repeatability * Math.Sqrt((1.0 / lns.Length) + (1.0 / after.Length));
                if (!IsMore(step.Doses, later.Doses, quantity) || lns.Average() - after.Average() < Sure * error)
                {
                    break;
                }

                readings = Math.Min(readings, Math.Min(lns.Length, after.Length));
            }

            values.Insert(0, Math.Exp(lns.Average()));
        }

        return ([.. values], readings);
    }

    private static double[] Lns(EvidenceStep step, Quantity quantity) => quantity == Quantity.Body
        ? [.. step.Readings.Select(r => r.Ln)] : [.. step.Strings.Select(r => r.Ln)];

    private static bool IsMore(Doses before, Doses after, Quantity quantity)
        => after.Of(quantity) > before.Of(quantity)
            && (quantity == Quantity.Body ? after.Strings <= before.Strings : after.Body <= before.Body);
}
