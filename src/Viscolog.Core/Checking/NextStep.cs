using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>What to do with a batch after its check. The set of cases is closed.</summary>
public abstract record NextStep
{
    private protected NextStep()
    {
    }

    /// <summary>It passes: nothing.</summary>
    public sealed record Release : NextStep;

    /// <summary>Read the pot as it is.</summary>
    /// <param name="Readings">How often; 1 or more.</param>
    /// <param name="Why">What for.</param>
    public sealed record Read(int Readings, StepReason Why) : NextStep;

    /// <summary>Let it stand and read again.</summary>
    /// <param name="More">Further standing time.</param>
    /// <param name="Why">Why.</param>
    public sealed record Wait(TimeSpan More, StepReason Why) : NextStep;

    /// <summary>Bring the pH into its band before anything else, stir, and read again.</summary>
    /// <param name="Raise">Whether it is to rise.</param>
    /// <param name="Band">Where to.</param>
    /// <param name="Why">Why that comes first.</param>
    public sealed record AdjustPh(bool Raise, AcidityBand Band, StepReason Why) : NextStep;

    /// <summary>Correct the body: thickener where it is short, base where it is over.</summary>
    /// <param name="Advice">How much; its action is an addition or a let-down.</param>
    public sealed record Correct(Advice Advice) : NextStep;

    /// <summary>Something that no number of grams or readings mends.</summary>
    /// <param name="What">What to do.</param>
    public sealed record Rework(StepReason What) : NextStep;
}
