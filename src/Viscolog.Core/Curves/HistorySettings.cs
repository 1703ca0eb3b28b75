namespace Viscolog.Core.Curves;

/// <summary>How earlier runs bear on a new one; defaults from memory.</summary>
internal static class HistorySettings
{
    /// <summary>Chance before any reading that a new pot is unlike every earlier run (a wrong base, a new recipe).</summary>
    public const double Unlike = 0.15;

    /// <summary>Chance of being unlike its history from which on a pot is also judged without it.</summary>
    public const double SignOfUnlike = 0.3;

    /// <summary>Chance from which on the history is set aside.</summary>
    public const double SurelyUnlike = 0.8;

    /// <summary>So many standard deviations between the base's body and its history are a sign of another base.</summary>
    public const double FarLevel = 2.5;

    /// <summary>Standard deviation of ln of a lot's potency, and so of every parameter.</summary>
    public const double LotPotencyLogSd = 0.08;

    /// <summary>Standard deviation between lots of ln of the base's body.</summary>
    public const double LotLevelSd = 0.15;
}
