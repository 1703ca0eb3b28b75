namespace Viscolog.Plots;

/// <summary>Which picture of a run.</summary>
internal enum PlotKind
{
    /// <summary>Body over dose.</summary>
    Dose,

    /// <summary>Value over standing time, one trace a step.</summary>
    Settling,

    /// <summary>Standardised residual over dose.</summary>
    Residuals,

    /// <summary>String length over dose.</summary>
    String,
}
