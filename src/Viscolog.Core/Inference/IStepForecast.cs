using System.Collections.Immutable;
using Viscolog.Core.Observing;

namespace Viscolog.Core.Inference;

/// <summary>What a posterior says of the steps of its run, for one thickener or two.</summary>
internal interface IStepForecast
{
    /// <summary>Repeatability of the body on the ln scale.</summary>
    double Repeatability { get; }

    /// <summary>The unit of the steps' doses in %, over which no thickener raises the body by more than a known factor.</summary>
    double RangeTop { get; }

    /// <summary>The steps in order of time.</summary>
    ImmutableArray<EvidenceStep> Steps { get; }

    /// <summary>What a step shows after standing for a time, without the reading's own error.</summary>
    LnEstimate At(EvidenceStep step, double waitSeconds);

    /// <summary>Change still to come at the start of a step's standing, for each case, in ln units.</summary>
    double[] ChangesIn(EvidenceStep step);

    /// <summary>τ in s of each case.</summary>
    double[] TimeConstants();
}
