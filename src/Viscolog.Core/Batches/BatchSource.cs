using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>Where the final doses of a batch come from. The set of cases is closed.</summary>
public abstract record BatchSource
{
    private protected BatchSource()
    {
    }

    /// <summary>The run ended there.</summary>
    /// <param name="Reached">The dose of its pot.</param>
    /// <param name="Thickener">Of this thickener.</param>
    /// <param name="HasTarget">Whether a target is stated; else what the run reads there is aimed at.</param>
    public sealed record EndOfRun(Dose Reached, string Thickener, bool HasTarget) : BatchSource;

    /// <summary>The run ended out of band, and its curve names the dose.</summary>
    /// <param name="IsOver">Whether it ended over, or short.</param>
    /// <param name="Reached">The dose of its pot.</param>
    /// <param name="Thickener">Of this thickener.</param>
    /// <param name="Named">The dose that its curve names.</param>
    public sealed record CurveOfRun(bool IsOver, Dose Reached, string Thickener, DoseEstimate Named) : BatchSource;

    /// <summary>The doses of a run of two thickeners, which has no curve of one.</summary>
    public sealed record RunOfTwo : BatchSource;

    /// <summary>The doses of a run of which no reading counts.</summary>
    public sealed record RunWithoutReadings : BatchSource;

    /// <summary>The doses of a run whose readings make no curve.</summary>
    /// <param name="Why">Why not.</param>
    public sealed record RunWithoutCurve(EvidenceTrouble Why) : BatchSource;
}
