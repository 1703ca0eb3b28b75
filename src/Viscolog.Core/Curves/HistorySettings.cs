namespace Viscolog.Core.Curves;

/// <summary>How earlier runs bear on a new one; defaults from memory.</summary>
internal static class HistorySettings
{
    /// <summary>Chance before any reading that a new pot is unlike every earlier run (a wrong base, a new recipe).</summary>
    public const double Unlike = 0.15;

    /// <summary>Standard deviation of ln of a lot's potency, and so of every parameter.</summary>
    public const double LotPotencyLogSd = 0.08;

    /// <summary>Standard deviation between lots of ln of the base's body.</summary>
    public const double LotLevelSd = 0.15;
}
