namespace Viscolog.Core.Practice;

/// <summary>What can be seen of a practice pot that was not treated well.</summary>
public enum PracticeSign
{
    /// <summary>Lumps: more at once than a pot takes, or hardly stirred.</summary>
    Lumps,

    /// <summary>Liquid stands on it: it holds more thickener than it can bind.</summary>
    Weeping,
}
