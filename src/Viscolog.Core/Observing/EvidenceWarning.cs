using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Observing;

/// <summary>What a reader of the results must know of a run's readings. The set of cases is closed.</summary>
public abstract record EvidenceWarning
{
    private protected EvidenceWarning()
    {
    }

    /// <summary>Readings could not be converted and are left out.</summary>
    /// <param name="Readings">How many.</param>
    /// <param name="Last">Why the last of them could not.</param>
    public sealed record LeftOut(int Readings, ConversionRefusal Last) : EvidenceWarning;

    /// <summary>The cup of the run can't tell the target.</summary>
    /// <param name="Cup">The cup.</param>
    /// <param name="Instead">One that can; null where none can.</param>
    public sealed record TargetBeyondCup(CupEquation Cup, CupEquation? Instead) : EvidenceWarning;

    /// <summary>What is to know of a reading.</summary>
    /// <param name="Warning">That.</param>
    public sealed record OfReading(ReadingWarning Warning) : EvidenceWarning;

    /// <summary>Bodies are yield stresses (see <see cref="ConvertedReading.YieldRate"/>).</summary>
    public sealed record YieldStresses : EvidenceWarning;

    /// <summary>Readings too far from the reference temperature are left out.</summary>
    /// <param name="Readings">How many.</param>
    public sealed record TooFarFromReference(int Readings) : EvidenceWarning;

    /// <summary>Readings were brought to the reference temperature.</summary>
    /// <param name="Readings">How many.</param>
    /// <param name="By">By what.</param>
    public sealed record Corrected(int Readings, CoefficientInUse By) : EvidenceWarning;

    /// <summary>Readings without temperature count as read at the reference temperature.</summary>
    /// <param name="Readings">How many.</param>
    public sealed record WithoutTemperature(int Readings) : EvidenceWarning;

    /// <summary>Readings without a standing time count as settled.</summary>
    /// <param name="Readings">How many.</param>
    public sealed record WithoutWait(int Readings) : EvidenceWarning;

    /// <summary>Steps hold more readings than the curve is fitted to (see <see cref="Thinning"/>).</summary>
    /// <param name="Readings">How many those steps hold.</param>
    /// <param name="Kept">How many of them count.</param>
    public sealed record Thinned(int Readings, int Kept) : EvidenceWarning;

    /// <summary>The pH moved within the run.</summary>
    /// <param name="Low">The lowest.</param>
    /// <param name="High">The highest.</param>
    public sealed record AcidityMoved(double Low, double High) : EvidenceWarning;

    /// <summary>Water was added, so that earlier readings count for less.</summary>
    /// <param name="Thickener">The thickener whose curve has moved.</param>
    public sealed record Watered(string Thickener) : EvidenceWarning;

    /// <summary>An alkali-swellable thickener hardly swells at the pH read.</summary>
    /// <param name="Ph">The pH.</param>
    public sealed record LowPh(double Ph) : EvidenceWarning;

    /// <summary>No usual range is stated for a thickener, and the common one is taken.</summary>
    /// <param name="Thickener">The thickener.</param>
    /// <param name="Assumed">The range that is assumed.</param>
    /// <param name="Active">The active matter that it goes by; null where none is stated.</param>
    public sealed record NoUsualRange(string Thickener, DoseRange Assumed, Percentage? Active) : EvidenceWarning;

    /// <summary>The target is beyond what spindle and speed can show.</summary>
    /// <param name="FullScale">What they show at full scale.</param>
    public sealed record TargetBeyondScale(Viscosity FullScale) : EvidenceWarning;
}

/// <summary>How readings are brought to the reference temperature.</summary>
/// <param name="Coefficient">The coefficient.</param>
/// <param name="Origin">Where it comes from.</param>
public sealed record CoefficientInUse(TemperatureCoefficient Coefficient, CoefficientOrigin Origin);

/// <summary>Where a temperature coefficient comes from.</summary>
public enum CoefficientOrigin
{
    /// <summary>Nobody knows the liquid's.</summary>
    Default,

    /// <summary>The run states it.</summary>
    Stated,

    /// <summary>The run's own readings at one dose and several temperatures.</summary>
    Learned,
}
