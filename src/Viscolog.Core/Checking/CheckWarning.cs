using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>What a reader of a check must know. The set of cases is closed.</summary>
public abstract record CheckWarning
{
    private protected CheckWarning()
    {
    }

    /// <summary>What holds of the readings by their method.</summary>
    /// <param name="Warning">That.</param>
    public sealed record OfReadings(EvidenceWarning Warning) : CheckWarning;

    /// <summary>Readings far off the others count for next to nothing.</summary>
    /// <param name="Count">How many.</param>
    /// <param name="Of">Of so many.</param>
    public sealed record Outliers(int Count, int Of) : CheckWarning;

    /// <summary>Readings taken before the pot had settled do not count.</summary>
    /// <param name="Count">How many.</param>
    public sealed record ReadEarly(int Count) : CheckWarning;

    /// <summary>Readings too far from the reference temperature are left out.</summary>
    /// <param name="Count">How many.</param>
    public sealed record TooFarFromReference(int Count) : CheckWarning;

    /// <summary>Readings without temperature are taken as near the reference.</summary>
    /// <param name="Count">How many.</param>
    /// <param name="Reference">The reference temperature.</param>
    public sealed record NoTemperature(int Count, Temperature Reference) : CheckWarning;

    /// <summary>The method was never checked with a certified oil.</summary>
    /// <param name="Method">The method.</param>
    public sealed record NeverChecked(Method Method) : CheckWarning;

    /// <summary>The last check of the method is too old to rely on.</summary>
    /// <param name="Drift">That check.</param>
    /// <param name="Today">The day of asking.</param>
    public sealed record CheckOverdue(MethodDrift Drift, DateOnly Today) : CheckWarning;

    /// <summary>The method was checked with an oil far thicker or thinner than the batch.</summary>
    /// <param name="Oil">The oil's viscosity.</param>
    public sealed record FarOil(Viscosity Oil) : CheckWarning;

    /// <summary>The specification is for another base.</summary>
    /// <param name="Asked">The base that it is for.</param>
    /// <param name="Own">That of the run.</param>
    public sealed record OtherBase(string Asked, string Own) : CheckWarning;

    /// <summary>The specification is for a thickener that the run does not name.</summary>
    /// <param name="Asked">The thickener.</param>
    public sealed record OtherThickener(string Asked) : CheckWarning;
}
