namespace Viscolog.Core.Advising;

/// <summary>What keeps an addition from being larger.</summary>
internal enum PairBound
{
    /// <summary>Nothing: it is the one with the best chance.</summary>
    BestChance,

    /// <summary>The risk that the body goes over.</summary>
    BodyRisk,

    /// <summary>The risk that the string goes over.</summary>
    StringRisk,

    /// <summary>Room for what the other thickener will still do.</summary>
    Room,

    /// <summary>The step cap.</summary>
    StepCap,

    /// <summary>The dose limit.</summary>
    Limit,
}
