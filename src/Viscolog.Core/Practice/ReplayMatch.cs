namespace Viscolog.Core.Practice;

/// <summary>How what was done compares with what was advised.</summary>
public enum ReplayMatch
{
    /// <summary>Nothing was done any more.</summary>
    Ended,

    /// <summary>As advised.</summary>
    AsAdvised,

    /// <summary>More thickener than advised.</summary>
    More,

    /// <summary>Less thickener than advised.</summary>
    Less,

    /// <summary>Thickener went in where none was advised.</summary>
    DosedAgainstAdvice,

    /// <summary>Something else than advised, but no thickener.</summary>
    Otherwise,
}
