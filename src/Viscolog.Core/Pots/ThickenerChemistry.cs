namespace Viscolog.Core.Pots;

/// <summary>What makes a thickener thicken.</summary>
public enum ThickenerChemistry
{
    /// <summary>None of the others, or not stated.</summary>
    Other,

    /// <summary>Swells when the acid groups on it are neutralised; needs the right pH.</summary>
    AlkaliSwellable,

    /// <summary>Links binder particles through water-shy ends; brings string and pull.</summary>
    Associative,

    /// <summary>A cellulose ether.</summary>
    Cellulosic,

    /// <summary>A swelling clay.</summary>
    Clay,
}
