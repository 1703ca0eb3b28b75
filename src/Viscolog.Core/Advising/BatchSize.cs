using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>How large a batch is to be, everything in it counted. The set of cases is closed.</summary>
public abstract record BatchSize
{
    private protected BatchSize()
    {
    }

    /// <summary>By mass.</summary>
    /// <param name="Mass">Above 0.</param>
    public sealed record OfMass(Mass Mass) : BatchSize;

    /// <summary>By volume.</summary>
    /// <param name="Volume">Above 0.</param>
    public sealed record OfVolume(Volume Volume) : BatchSize;
}
