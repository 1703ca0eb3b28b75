using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>How much of one thickener a batch takes.</summary>
/// <param name="Part">The thickener and its dose.</param>
/// <param name="Neat">Thickener as supplied.</param>
/// <param name="Water">The water that it is cut with.</param>
public sealed record PartAmount(RecipePart Part, Mass Neat, Mass Water)
{
    /// <summary>Thickener and its water together.</summary>
    public Mass Poured => Neat + Water;
}
