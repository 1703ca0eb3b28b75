using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>From dose and viscosity to the cells and dots of a grid.</summary>
/// <param name="Window">What the grid shows.</param>
/// <param name="Grid">The grid.</param>
internal sealed record ChartScale(DoseWindow Window, CharGrid Grid)
{
    public int Column(double dose) => Across(dose, Grid.Columns);

    public int Row(double viscosity) => Down(viscosity, Grid.Rows);

    public int Row(Viscosity viscosity) => Row(viscosity.MilliPascalSeconds);

    public int DotRow(double viscosity) => Down(viscosity, Grid.DotRows);

    /// <summary>The dose in the middle of a column of dots.</summary>
    public double DoseAt(int dotColumn) => Window.Dose * dotColumn / Math.Max(1, Grid.DotColumns - 1);

    private int Across(double dose, int columns) => (int)Math.Round(dose / Window.Dose * (columns - 1));

    private int Down(double viscosity, int rows)
        => (int)Math.Round(Math.Log(Window.High / viscosity) / Math.Log(Window.High / Window.Low) * (rows - 1));
}
