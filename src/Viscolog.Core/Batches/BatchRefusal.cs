using Viscolog.Core.Limits;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>Why no batch can be planned after a run. The set of cases is closed.</summary>
public abstract record BatchRefusal
{
    private protected BatchRefusal()
    {
    }

    /// <summary>No thickener has gone into the run.</summary>
    public sealed record NothingDosed : BatchRefusal;

    /// <summary>A volume was asked for and the base's density is not stated.</summary>
    public sealed record NoDensity : BatchRefusal;

    /// <summary>The run was read where its thickener hardly swells.</summary>
    /// <param name="Ph">The pH.</param>
    public sealed record LowPh(double Ph) : BatchRefusal;

    /// <summary>The run's pot holds none of the thickener that its curve is of.</summary>
    /// <param name="Thickener">The thickener.</param>
    public sealed record NoneInPot(string Thickener) : BatchRefusal;

    /// <summary>The run's curve names no dose for the target.</summary>
    /// <param name="IsOver">Whether the run ended over the band, or short of it.</param>
    /// <param name="Thickener">The thickener.</param>
    /// <param name="Limit">The dose limit, within which there is none.</param>
    public sealed record NoDoseForTarget(bool IsOver, string Thickener, DoseLimit Limit) : BatchRefusal;

    /// <summary>The scale can't weigh the smallest addition.</summary>
    /// <param name="SmallestGrams">That addition, in g.</param>
    /// <param name="Step">Step of the scale.</param>
    /// <param name="Needed">The step that would do.</param>
    public sealed record ScaleTooCoarse(double SmallestGrams, Mass Step, Mass Needed) : BatchRefusal;
}
