namespace Viscolog.Cli;

/// <summary>What a screen may use.</summary>
/// <param name="IsAscii">Only printable ASCII.</param>
/// <param name="HasColor">Colours.</param>
/// <param name="IsSixteenColors">No more than sixteen of them.</param>
internal sealed record Look(bool IsAscii, bool HasColor, bool IsSixteenColors);
