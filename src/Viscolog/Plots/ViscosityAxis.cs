using OxyPlot.Axes;

namespace Viscolog.Plots;

/// <summary>A logarithmic axis whose labels are numbers in full at round values.</summary>
internal sealed class ViscosityAxis : LogarithmicAxis
{
    public ViscosityAxis() => LabelFormatter = value => PlotText.Number(value);

    public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues, out IList<double> minorTickValues)
    {
        majorTickValues = [.. LogTicks.Major(ActualMinimum, ActualMaximum)];
        majorLabelValues = [.. majorTickValues];
        minorTickValues = [.. LogTicks.Minor(ActualMinimum, ActualMaximum)];
    }
}
