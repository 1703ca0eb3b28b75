using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What to do at the bench. The set of cases is closed.</summary>
public abstract record BenchAction
{
    private protected BenchAction()
    {
    }

    /// <summary>Add thickener, stir, wait, read.</summary>
    /// <param name="Poured">Grams to pour, dilution water included, rounded down to the scale's step.</param>
    /// <param name="Increment">The thickener in it, over the base now in the pot.</param>
    /// <param name="After">The dose after it.</param>
    /// <param name="Standing">Standing time before the reading.</param>
    public sealed record Add(Mass Poured, Dose Increment, Dose After, TimeSpan Standing) : BenchAction;

    /// <summary>Read again after more standing: the pot still builds.</summary>
    /// <param name="More">Further standing time.</param>
    public sealed record Wait(TimeSpan More) : BenchAction;

    /// <summary>In band: stop.</summary>
    public sealed record Stop : BenchAction;

    /// <summary>Over the band: add base.</summary>
    /// <param name="Base">Grams of base.</param>
    /// <param name="After">The dose after it.</param>
    public sealed record LetDown(Mass Base, Dose After) : BenchAction;

    /// <summary>The target can't be had as things stand.</summary>
    /// <param name="Remedy">What to change; the reason says more.</param>
    public sealed record GiveUp(Remedy Remedy) : BenchAction;

    /// <summary>A reading is missing or contradicts the others; the reason says which.</summary>
    /// <param name="Standing">Standing time before the reading; null where it does not matter.</param>
    public sealed record Measure(TimeSpan? Standing) : BenchAction
    {
        /// <summary>Whether the string alone is to be read.</summary>
        public bool IsOfString { get; init; }
    }
}
