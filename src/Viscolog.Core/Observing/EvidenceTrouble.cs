using System.Collections.Immutable;
using Viscolog.Core.Measuring;

namespace Viscolog.Core.Observing;

/// <summary>Why a run's readings can't carry a curve. The set of cases is closed.</summary>
public abstract record EvidenceTrouble
{
    private protected EvidenceTrouble()
    {
    }

    /// <summary>The run names no thickener.</summary>
    public sealed record NoThickener : EvidenceTrouble;

    /// <summary>The readings were taken under different shear conditions.</summary>
    /// <param name="Conditions">Those; two or more.</param>
    public sealed record MixedConditions(ImmutableArray<ShearCondition> Conditions) : EvidenceTrouble;

    /// <summary>The pot holds another thickener beside the one whose curve is asked for.</summary>
    /// <param name="Other">The other one.</param>
    /// <param name="Thickener">The one asked for.</param>
    public sealed record AnotherThickener(string Other, string Thickener) : EvidenceTrouble;

    /// <summary>Body and string together take two thickeners, and the run does not name just two.</summary>
    public sealed record NotTwoThickeners : EvidenceTrouble;

    /// <summary>The run has more steps than one pot ever takes.</summary>
    /// <param name="Steps">How many.</param>
    /// <param name="Most">How many are looked at, at most.</param>
    public sealed record TooManySteps(int Steps, int Most) : EvidenceTrouble;

    /// <summary>Nothing of the last step that was read could be converted.</summary>
    /// <param name="Reason">Why the last reading could not.</param>
    /// <param name="IsByCup">Whether it was read by a cup, of which a run has one.</param>
    public sealed record NothingConverted(ConversionRefusal Reason, bool IsByCup) : EvidenceTrouble;
}
