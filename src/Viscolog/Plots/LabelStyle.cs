using OxyPlot;

namespace Viscolog.Plots;

/// <summary>How a label inside a plot looks.</summary>
/// <param name="Font">Family.</param>
/// <param name="Size">In px.</param>
/// <param name="Color">Of the text.</param>
/// <param name="Ground">How much of what lies beneath is covered, 0 to 255.</param>
internal sealed record LabelStyle(string Font, double Size, OxyColor Color, byte Ground = 0xD8);
