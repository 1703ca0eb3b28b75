using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>Body and string at any pair of doses inside a map, straight in ln between its grid points.</summary>
internal sealed class PairField(PairMap map)
{
    private readonly double width = map.BodyDoses[^1].Percent;
    private readonly double height = map.StringDoses[^1].Percent;

    /// <summary>Body in mPa·s and string in mm at doses in %.</summary>
    public (double Body, double Length) At(double body, double strings)
    {
        var (columns, rows) = (map.BodyDoses.Length - 1, map.StringDoses.Length - 1);
        var (x, y) = (Math.Clamp(body / width * columns, 0, columns), Math.Clamp(strings / height * rows, 0, rows));
        var (i, j) = (Math.Min((int)x, columns - 1), Math.Min((int)y, rows - 1));
        var (u, v) = (x - i, y - j);
        double Between(Func<int, int, double> value)
            => Math.Exp(((1 - u) * (1 - v) * Math.Log(value(i, j))) + (u * (1 - v) * Math.Log(value(i + 1, j))) + ((1 - u) * v * Math.Log(value(i, j + 1))) + (u * v * Math.Log(value(i + 1, j + 1))));
        return (Between((a, b) => map.Body(a, b).MilliPascalSeconds), Between((a, b) => map.Length(a, b).Millimeters));
    }
}
