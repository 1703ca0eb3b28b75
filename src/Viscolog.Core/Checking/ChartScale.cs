namespace Viscolog.Core.Checking;

/// <summary>On which scale a control chart is worked out.</summary>
public enum ChartScale
{
    /// <summary>The values as they are.</summary>
    Linear,

    /// <summary>Their natural logarithms: for viscosities and times, which scatter by per cent.</summary>
    Log,
}
