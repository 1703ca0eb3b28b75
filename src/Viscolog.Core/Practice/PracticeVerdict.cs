namespace Viscolog.Core.Practice;

/// <summary>How a game ended.</summary>
public enum PracticeVerdict
{
    /// <summary>Below the band.</summary>
    StillShort,

    /// <summary>In band.</summary>
    InBand,

    /// <summary>Above the band, or beyond the peak of its curve.</summary>
    Over,
}
