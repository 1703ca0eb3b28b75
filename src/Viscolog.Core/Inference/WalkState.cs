using System.Runtime.InteropServices;

namespace Viscolog.Core.Inference;

/// <summary>
/// What is known of the parts of a curve that readings fix by linear algebra: a level that walks along the path of doses, and two
/// coefficients that stay. Mean and covariance of a normal distribution; Kalman's update (Journal of Basic Engineering 82 (1960) 35–45).
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal struct WalkState
{
    public double Level;
    public double First;
    public double Second;
    private double _v00;
    private double _v01;
    private double _v02;
    private double _v11;
    private double _v12;
    private double _v22;

    /// <summary>The state before any reading, its parts independent.</summary>
    /// <param name="level">Mean and standard deviation of the level.</param>
    /// <param name="first">Of the first coefficient.</param>
    /// <param name="second">Of the second.</param>
    public WalkState((double Mean, double Sd) level, (double Mean, double Sd) first, (double Mean, double Sd) second)
    {
        (Level, First, Second) = (level.Mean, first.Mean, second.Mean);
        (_v00, _v11, _v22) = (level.Sd * level.Sd, first.Sd * first.Sd, second.Sd * second.Sd);
    }

    /// <summary>Standard deviation of the first coefficient.</summary>
    public readonly double FirstSd => Math.Sqrt(_v11);

    /// <summary>Standard deviation of the second coefficient.</summary>
    public readonly double SecondSd => Math.Sqrt(_v22);

    /// <summary>The level walks on by so much variance.</summary>
    public void Walk(double variance) => _v00 += variance;

    /// <summary>Mean and variance of level + h1·first + h2·second.</summary>
    public readonly (double Mean, double Variance) At(double h1, double h2)
        => (Level + (h1 * First) + (h2 * Second),
            _v00 + (h1 * ((2 * _v01) + (h1 * _v11))) + (h2 * ((2 * _v02) + (h2 * _v22) + (2 * h1 * _v12))));

    /// <summary>Takes in a reading of level + h1·first + h2·second that may be an outlier.</summary>
    /// <param name="h1">Weight of the first coefficient.</param>
    /// <param name="h2">Weight of the second.</param>
    /// <param name="value">The reading, less what is known of it.</param>
    /// <param name="noise">Variance of its error.</param>
    /// <returns>Its density, up to a constant.</returns>
    public double Update(double h1, double h2, double value, double noise)
    {
        var (p0, p1, p2) = (_v00 + (h1 * _v01) + (h2 * _v02), _v01 + (h1 * _v11) + (h2 * _v12), _v02 + (h1 * _v12) + (h2 * _v22));
        var variance = p0 + (h1 * p1) + (h2 * p2);
        var innovation = value - Level - (h1 * First) - (h2 * Second);
        var (density, counted) = CurveFilter.RobustDensity(innovation, variance, noise);
        var scale = 1 / (variance + counted);
        var step = innovation * scale;
        Level += p0 * step;
        First += p1 * step;
        Second += p2 * step;
        _v00 -= p0 * p0 * scale;
        _v01 -= p0 * p1 * scale;
        _v02 -= p0 * p2 * scale;
        _v11 -= p1 * p1 * scale;
        _v12 -= p1 * p2 * scale;
        _v22 -= p2 * p2 * scale;
        return density;
    }

    /// <summary>Smooths filtered states in place, the last first.</summary>
    /// <param name="states">The states after each step.</param>
    /// <param name="walkBefore">Variance that the level walks before a step.</param>
    public static void Smooth(Span<WalkState> states, Func<int, double> walkBefore)
    {
        for (var k = states.Length - 2; k >= 0; k--)
        {
            states[k] = states[k].Smoothed(states[k + 1], walkBefore(k + 1));
        }
    }

    /// <summary>
    /// This filtered state once what came later is known (Rauch, Tung and Striebel, AIAA Journal 3 (1965) 1445–1450). Only the level walks,
    /// so
    /// this state is the later one less what the level walked in between, which the later state tells in part.
    /// </summary>
    /// <param name="later">The next state, smoothed.</param>
    /// <param name="walked">Variance that the level walked in between.</param>
    public readonly WalkState Smoothed(in WalkState later, double walked)
    {
        var p00 = _v00 + walked;
        var (c0, c1, c2) = ((_v11 * _v22) - (_v12 * _v12), (_v12 * _v02) - (_v01 * _v22), (_v01 * _v12) - (_v11 * _v02));
        var determinant = (p00 * c0) + (_v01 * c1) + (_v02 * c2);
        if (walked <= 0 || determinant <= 0)
        {
            return later;
        }

        // First row of the inverse of the covariance after the walk, times the walk's variance.
        var (r0, r1, r2) = (walked * c0 / determinant, walked * c1 / determinant, walked * c2 / determinant);
        var result = later;
        result.Level -= (r0 * (later.Level - Level)) + (r1 * (later.First - First)) + (r2 * (later.Second - Second));
        var (a0, a1, a2) = (1 - r0, -r1, -r2);
        result._v01 = (a0 * later._v01) + (a1 * later._v11) + (a2 * later._v12);
        result._v02 = (a0 * later._v02) + (a1 * later._v12) + (a2 * later._v22);
        var first = (a0 * later._v00) + (a1 * later._v01) + (a2 * later._v02);
        result._v00 = (a0 * first) + (a1 * result._v01) + (a2 * result._v02) + (walked * (1 - r0));
        return result;
    }
}
