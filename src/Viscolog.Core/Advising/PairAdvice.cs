using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What advice says of the string and of the other thickener, beside the body.</summary>
/// <param name="Low">The least string wanted.</param>
/// <param name="High">The greatest string wanted.</param>
public sealed record PairAdvice(Length Low, Length High)
{
    /// <summary>The string now; null before any reading of it.</summary>
    public LengthEstimate? Now { get; init; }

    /// <summary>The string that the action leads to; null where the action leaves the pot as it is.</summary>
    public LengthEstimate? Expected { get; init; }

    /// <summary>Chance that the string is in band: after the action where it changes the pot, else now.</summary>
    public required Percentage ChanceInBand { get; init; }

    /// <summary>Chance that the string is over its band, likewise.</summary>
    public required Percentage ChanceOver { get; init; }

    /// <summary>Chance that body and string are both in band, likewise.</summary>
    public required Percentage ChanceBoth { get; init; }

    /// <summary>The thickener that the advice is not about.</summary>
    public required string OtherThickener { get; init; }

    /// <summary>Its dose now.</summary>
    public required Dose OtherDoseNow { get; init; }

    /// <summary>What is still to come to the end, this addition included; empty where nothing is.</summary>
    public ImmutableArray<PlannedDose> Plan { get; init; } = [];

    /// <summary>Whether the next reading must be of the string alone.</summary>
    public bool AsksForString { get; init; }
}

/// <summary>What is still to come of one thickener, in outline.</summary>
/// <param name="Thickener">Its name.</param>
/// <param name="About">About how much more.</param>
/// <param name="Additions">In about how many additions.</param>
public sealed record PlannedDose(string Thickener, Dose About, int Additions);
