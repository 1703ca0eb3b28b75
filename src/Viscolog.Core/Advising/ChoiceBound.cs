namespace Viscolog.Core.Advising;

/// <summary>What kept a chosen dose from being larger.</summary>
internal enum ChoiceBound
{
    /// <summary>More would be less likely to land in band.</summary>
    BestChance,

    /// <summary>More would carry too great a chance of going over.</summary>
    Risk,

    /// <summary>The largest single increment.</summary>
    StepCap,

    /// <summary>The dose limit.</summary>
    Limit,
}
