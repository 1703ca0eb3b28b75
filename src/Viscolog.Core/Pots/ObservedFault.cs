namespace Viscolog.Core.Pots;

/// <summary>What a person saw go wrong in the pot; each is a sign of too much thickener (common practice, no source).</summary>
public enum ObservedFault
{
    /// <summary>Lumps or seeds that stirring does not take out.</summary>
    Lumps,

    /// <summary>Liquid that comes out of the body by itself.</summary>
    Weeping,

    /// <summary>Strings where none are wanted.</summary>
    Strings,

    /// <summary>Marks of the brush or spatula that stay.</summary>
    NoLevelling,
}
