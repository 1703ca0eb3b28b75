using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;

namespace Viscolog.Core.Checking;

/// <summary>Why a batch can't be checked. The set of cases is closed.</summary>
public abstract record CheckRefusal
{
    private protected CheckRefusal()
    {
    }

    /// <summary>The specification asks for nothing.</summary>
    /// <param name="Specification">Its name.</param>
    public sealed record AsksForNothing(string Specification) : CheckRefusal;

    /// <summary>The specification asks for readings by another method.</summary>
    /// <param name="Specification">Its name.</param>
    /// <param name="Asked">The method that it asks for.</param>
    /// <param name="Read">That of the readings.</param>
    public sealed record OtherMethod(string Specification, Method Asked, Method Read) : CheckRefusal;

    /// <summary>The readings were taken under different shear conditions.</summary>
    /// <param name="Conditions">Those; two or more.</param>
    public sealed record MixedConditions(ImmutableArray<ShearCondition> Conditions) : CheckRefusal;

    /// <summary>No reading of the last step becomes a body.</summary>
    /// <param name="Why">Why not.</param>
    public sealed record NoBody(EvidenceTrouble Why) : CheckRefusal;
}
