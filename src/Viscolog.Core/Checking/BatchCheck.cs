using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>A batch against its specification.</summary>
/// <param name="Run">The batch, at the specification's reference temperature.</param>
/// <param name="Specification">What it must meet.</param>
/// <param name="Verdict">What the decision rule says.</param>
/// <param name="Next">What to do.</param>
public sealed record BatchCheck(Run Run, Specification Specification, Verdict Verdict, NextStep Next)
{
    /// <summary>The body; null where none is asked for.</summary>
    public BodyCheck? Body { get; init; }

    /// <summary>The pH; null where none is asked for.</summary>
    public AcidityCheck? Acidity { get; init; }

    /// <summary>The string length; null where none is asked for.</summary>
    public StringCheck? StringLength { get; init; }

    /// <summary>The method and speed of the readings; null where there is none.</summary>
    public ShearCondition? Condition { get; init; }

    /// <summary>The last check of the method with a certified oil; null where there was none.</summary>
    public MethodDrift? Drift { get; init; }

    /// <summary>What the reader must know.</summary>
    public ImmutableArray<CheckWarning> Warnings { get; init; } = [];

    /// <summary>The least probability of conformity among what is asked for; null where something was not read.</summary>
    public Percentage? Chance
    {
        get
        {
            Percentage?[] asked = [.. Body is null ? [] : new[] { Body.Chance }, .. Acidity is null
                ? [] : new[] { Acidity.Chance }, .. StringLength is null ? [] : new[] { StringLength.Chance }];
            return asked.Contains(null) ? null : asked.Min();
        }
    }
}

/// <summary>A batch's body against its band.</summary>
/// <param name="Value">The body; null where no reading counts.</param>
/// <param name="Band">The band.</param>
/// <param name="Chance">Probability of conformity; null without a value.</param>
/// <param name="Accepted">Measured values that would be accepted at this uncertainty: the band less a guard band at either end; null where
/// none would be.</param>
public sealed record BodyCheck(BatchValue? Value, ViscosityBand Band, Percentage? Chance, ViscosityBand? Accepted)
{
    /// <summary>The guard band at either end, relative; null where nothing would be accepted.</summary>
    public Percentage? GuardBand => Accepted is { } inside
        ? Percentage.FromFraction(Math.Max(0, Math.Exp(inside.Low.Ln - Band.Low.Ln) - 1)) : null;

    /// <summary>Whether the value lies below the aim.</summary>
    public bool IsBelowAim => Value is { } value && value.Body < Band.Aim;
}
