using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>What the maker of a batch must know. The set of cases is closed.</summary>
public abstract record BatchNote
{
    private protected BatchNote()
    {
    }

    /// <summary>The smallest addition is under three steps of the scale.</summary>
    /// <param name="Step">Step of the scale.</param>
    /// <param name="Water">Parts of water to one of thickener that make it three steps; 1 or more.</param>
    /// <param name="Needed">The step of a scale that needs no water.</param>
    public sealed record FewScaleSteps(Mass Step, double Water, Mass Needed) : BatchNote;

    /// <summary>The run's base changed, so its grams don't carry over.</summary>
    /// <param name="Taken">Samples that were taken.</param>
    /// <param name="Added">Base that let it down.</param>
    public sealed record BaseChanged(Mass Taken, Mass Added) : BatchNote;

    /// <summary>Water was poured into the run on its own.</summary>
    /// <param name="OnBase">How much, on base.</param>
    public sealed record WaterOnItsOwn(Percentage OnBase) : BatchNote;

    /// <summary>A thickener counts in the batch's volume with a density that nobody stated.</summary>
    /// <param name="Thickener">The thickener.</param>
    public sealed record DensityTaken(string Thickener) : BatchNote;

    /// <summary>Several thickeners go in in the order of the run.</summary>
    public sealed record OrderOfRun : BatchNote;

    /// <summary>Size, lots, colour and filler shift the curve.</summary>
    public sealed record ReadingsDecide : BatchNote;

    /// <summary>What holds of the run's readings.</summary>
    /// <param name="Warning">That.</param>
    public sealed record OfEvidence(EvidenceWarning Warning) : BatchNote;
}
