using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Observing;

/// <summary>
/// The repeatability that repeat readings show: the pooled standard deviation of ln body within steps, √(Σ SS/Σ df) (NIST/SEMATECH
/// e-Handbook of Statistical
/// Methods, section 2.4.4.3), once there are enough of them.
/// </summary>
public static class LearnedRepeatability
{
    /// <summary>Repeats (degrees of freedom) from which on the method's default gives way.</summary>
    public const int Enough = 8;

    /// <summary>Temperatures further apart than this, in °C, make no repeats.</summary>
    private const double SameCelsius = 1;

    /// <summary>
    /// A spread of a step beyond so many defaults is an outlier or a change of the pot, no scatter (a rule of this project).
    /// </summary>
    private const double MostDefaults = 6;

    /// <summary>A few lucky repeats never count for less than this part of the default (a rule of this project).</summary>
    private const double LeastPart = 0.25;

    /// <summary>
    /// The run with its repeatability learned from its own and earlier repeats by the same method; as it is where it states one or too few
    /// are there.
    /// </summary>
    /// <param name="run">The run.</param>
    /// <param name="earlier">Runs of the same bench; those under another shear condition are left aside.</param>
    public static Run Into(Run run, IEnumerable<Run> earlier)
    {
        if (run.Repeatability is not null)
        {
            return run;
        }

        var (deviation, freedom) = Repeats(earlier.Where(r => ShearConditions.Agree(r, run)).Append(run));
        var least = LeastPart * run.MethodInForce.Repeatability.Fraction;
        return freedom < Enough ? run : run with { Repeatability = Percentage.FromFraction(Math.Max(least, deviation)) };
    }

    /// <summary>Pools the repeats of runs.</summary>
    /// <param name="runs">Runs by one method under one shear condition.</param>
    /// <param name="scatter">
    /// A step's readings that spread over so many times <see cref="MostDefaults"/> of the default are no repeats.
    /// </param>
    /// <returns>As <see cref="Pooled"/>.</returns>
    internal static (double Deviation, int Freedom) Repeats(IEnumerable<Run> runs, double scatter = 1)
        => Pooled(runs.SelectMany(r => Groups(r, scatter)));

    /// <summary>Pools groups of repeats.</summary>
    /// <param name="groups">Values in each; a single value says nothing.</param>
    /// <returns>The pooled standard deviation, and its degrees of freedom; both 0 without repeats.</returns>
    internal static (double Deviation, int Freedom) Pooled(IEnumerable<double[]> groups)
    {
        var (sum, freedom) = (0.0, 0);
        foreach (var group in groups.Where(g => g.Length > 1))
        {
            var mean = group.Average();
            sum += group.Sum(v => (v - mean) * (v - mean));
            freedom += group.Length - 1;
        }

        return freedom == 0 ? (0, 0) : (Math.Sqrt(sum / freedom), freedom);
    }

    private static IEnumerable<double[]> Groups(Run run, double scatter)
    {
        var most = scatter * MostDefaults * run.MethodInForce.Repeatability.Fraction;
        var place = 0;
        foreach (var step in Steps.Of(run))
        {
            var isFirst = place++ == 0;
            double[] group =
            [
                .. SameTemperature([.. step.Readings.Select(r => r.Reading)])
                    .Where(r => isFirst || (r.Wait is not null && r.Wait.Value.TotalSeconds >= Settled.SecondsIn(run)))
                    .Select(r => r.Value is { } value ? Conversions.ToBody(run.MethodInForce, value, run.Setup, run.Base.Density) : null)
                    .OfType<Conversion.Converted>()
                    .Select(c => c.Reading.Body!.Value.Ln),
            ];
            if (group.Length > 1 && group.Max() - group.Min() <= most)
            {
                yield return group;
            }
        }
    }

    private static IEnumerable<Reading> SameTemperature(IReadOnlyList<Reading> readings)
    {
        var first = readings.FirstOrDefault(r => r.Value is not null)?.Temperature;
        return readings.Where(r => first is null == r.Temperature is null
            && (first is null || Math.Abs(r.Temperature!.Value.Celsius - first.Value.Celsius) <= SameCelsius));
    }
}
