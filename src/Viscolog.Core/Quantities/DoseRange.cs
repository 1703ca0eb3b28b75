namespace Viscolog.Core.Quantities;

/// <summary>A supplier's usual range of doses.</summary>
/// <param name="Low">The least usual dose.</param>
/// <param name="Top">The greatest usual dose; above the least.</param>
public sealed record DoseRange(Dose Low, Dose Top)
{
    /// <summary>1 to 5 %, used where a run states none (common practice, no source).</summary>
    public static DoseRange Common { get; } = new(Dose.FromPercent(1), Dose.FromPercent(5));

    /// <summary>The greatest usual dose; above the least.</summary>
    public Dose Top { get; } = Top > Low ? Top : throw new ArgumentOutOfRangeException(nameof(Top), Top.Percent, "must be above the least dose");
}
