namespace Viscolog.Plots;

/// <summary>Which picture of a run with two thickeners.</summary>
internal enum PairKind
{
    /// <summary>Body and string over each dose.</summary>
    Dose,

    /// <summary>The two doses with contours of body and the band of the string.</summary>
    Map,
}
