using Viscolog.Core.Advising;

namespace Viscolog.Tui;

/// <summary>What was last advised.</summary>
/// <param name="Advice">The advice; null where there is none.</param>
/// <param name="Refused">Why there is none; null where there is one.</param>
/// <param name="Picture">What the chart shows; null where nothing can be drawn.</param>
internal sealed record BenchAdvice(Advice? Advice, string? Refused, RunPicture? Picture)
{
    /// <summary>What the map shows in place of the chart; null but for a run with two thickeners.</summary>
    public PairPicture? Pair { get; init; }
}
