using System.Globalization;

namespace Viscolog.Plots;

/// <summary>One axis of a chart in characters.</summary>
/// <param name="Title">What it counts, with the unit.</param>
/// <param name="Low">Where it begins; above 0 on a logarithmic axis.</param>
/// <param name="High">Where it ends; above <paramref name="Low"/>.</param>
/// <param name="IsLogarithmic">Whether equal steps are equal ratios.</param>
internal sealed record CharAxis(string Title, double Low, double High, bool IsLogarithmic)
{
    /// <summary>The longest label.</summary>
    private const int LabelColumns = 9;

    /// <summary>Whether only whole numbers are labelled: places in an order have no halves.</summary>
    public bool CountsPlaces { get; init; }

    /// <summary>The place among <paramref name="count"/> places, the first at <see cref="Low"/>; outside the axis it lies outside the places.</summary>
    public int Place(double value, int count)
    {
        var part = IsLogarithmic ? Math.Log(value / Low) / Math.Log(High / Low) : (value - Low) / (High - Low);
        return double.IsNaN(part) ? -1 : (int)Math.Round(Math.Clamp(part, -1, 2) * (count - 1));
    }

    /// <summary>The value at a place.</summary>
    public double At(int place, int count)
    {
        var part = place / (double)Math.Max(1, count - 1);
        return IsLogarithmic ? Low * Math.Pow(High / Low, part) : Low + (part * (High - Low));
    }

    /// <summary>The values that are labelled, the ones to keep first where two would share a place.</summary>
    /// <param name="most">About how many.</param>
    public IEnumerable<double> Marks(int most) => IsLogarithmic
        ? LogTicks.Major(Low, High).OrderBy(v => Math.Abs(Math.Log10(v) - Math.Round(Math.Log10(v))) > 1e-9)
        : RoundSteps.Between(Low, High, most).Where(v => !CountsPlaces || Math.Abs(v - Math.Round(v)) < 1e-9).OrderBy(v => Math.Abs(v));

    /// <summary>A label.</summary>
    public static string Label(double value, ChartGlyphs glyphs)
    {
        var text = value < 0 ? "-" + PlotText.Number(-value, glyphs.Thousands) : PlotText.Number(value, glyphs.Thousands);
        return text.Length <= LabelColumns ? text : value.ToString("0.#E+0", CultureInfo.InvariantCulture);
    }
}
