using Viscolog.Core.Observing;

namespace Viscolog.Core.Inference;

/// <summary>
/// The way of a pot through the doses of two thickeners, step by step, each dose over the top of its thickener's usual range.
/// </summary>
internal sealed class PairPath
{
    public PairPath(Evidence evidence)
    {
        Body = [.. evidence.Steps.Select(s => s.Dose / evidence.RangeTop)];
        var stringTop = evidence.StringTop;
        String = [.. evidence.Steps.Select(s => s.Doses.Strings.Percent / stringTop)];
        IsRising = Enumerable.Range(1, Count - 1).All(k => Body[k] >= Body[k - 1] && String[k] >= String[k - 1]);
    }

    /// <summary>Number of steps.</summary>
    public int Count => Body.Length;

    /// <summary>Doses of the body thickener.</summary>
    public double[] Body { get; }

    /// <summary>Doses of the string thickener.</summary>
    public double[] String { get; }

    private bool IsRising { get; }

    /// <summary>How far a step lies from a place, each thickener's part of the way for itself.</summary>
    public (double Body, double String) Distance(int step, double body, double @string)
        => (Math.Abs(body - Body[step]), Math.Abs(@string - String[step]));

    /// <summary>The step whose level tells most about a place: the one from which the walk there is shortest.</summary>
    public int Nearest(double body, double @string)
    {
        var last = Count - 1;
        if (IsRising && body >= Body[last] && @string >= String[last])
        {
            return last;
        }

        var (best, least) = (last, double.PositiveInfinity);
        for (var k = last; k >= 0; k--)
        {
            var (b, s) = Distance(k, body, @string);
            (best, least) = b + s < least - 1e-12 ? (k, b + s) : (best, least);
        }

        return best;
    }
}
