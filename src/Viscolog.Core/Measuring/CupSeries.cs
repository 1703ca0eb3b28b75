namespace Viscolog.Core.Measuring;

/// <summary>The sets of cups of one standard and size.</summary>
public enum CupSeries
{
    /// <summary>Flow cups of ISO 2431.</summary>
    Iso2431,

    /// <summary>Efflux cups of ASTM D1200.</summary>
    D1200,

    /// <summary>Dip cups of 44 mL (ASTM D4212).</summary>
    Dip44,

    /// <summary>Dip cups of 23 mL with a capillary (ASTM D4212).</summary>
    Dip23,
}
