namespace Viscolog.Core.Curves;

/// <summary>How earlier runs bear on a new one; defaults from memory.</summary>
internal static class HistorySettings
{
    /// <summary>Chance before any reading that a new pot has the base of the earlier runs but another thickener.</summary>
    public const double UnlikeThickener = 0.05;

    /// <summary>Chance before any reading that its base is another one.</summary>
    public const double UnlikeBase = 0.1;

    /// <summary>Of the pots that are like the earlier runs, so many are believed to be like all of them together, the others like any one of them.</summary>
    public const double Together = 0.7;

    /// <summary>A single run never speaks against a shape by more than leaving it this weight.</summary>
    public const double LeastShapeWeight = 0.03;

    /// <summary>Chance of being unlike its history from which on a pot is also judged without it.</summary>
    public const double SignOfUnlike = 0.3;

    /// <summary>Chance from which on the history is set aside.</summary>
    public const double SurelyUnlike = 0.8;

    /// <summary>So many standard deviations between the base's body and its history are a sign of another base.</summary>
    public const double FarLevel = 1.5;

    /// <summary>Standard deviation of ln of a lot's potency.</summary>
    public const double LotPotencyLogSd = 0.08;

    /// <summary>Standard deviation between lots of ln of each parameter, beyond what potency does.</summary>
    public const double LotParameterLogSd = 0.04;

    /// <summary>Standard deviation between lots of ln τ and of ln of the stray.</summary>
    public const double LotExtraLogSd = 0.15;

    /// <summary>Standard deviation between lots of ln of the base's body.</summary>
    public const double LotLevelSd = 0.15;
}
