namespace Viscolog.Core.Measuring;

/// <summary>What would suit a liquid better than what it was read with. The set of cases is closed.</summary>
public abstract record BetterChoice
{
    private protected BetterChoice()
    {
    }

    /// <summary>Another cup of the set.</summary>
    /// <param name="Cup">Which.</param>
    /// <param name="About">The time that it would take.</param>
    public sealed record AnotherCup(CupEquation Cup, TimeSpan About) : BetterChoice;

    /// <summary>A higher speed or a larger spindle.</summary>
    /// <param name="Times">So many times the speed, for a Newtonian liquid.</param>
    public sealed record Faster(double Times) : BetterChoice;

    /// <summary>A lower speed or a smaller spindle.</summary>
    public sealed record Slower : BetterChoice;
}
