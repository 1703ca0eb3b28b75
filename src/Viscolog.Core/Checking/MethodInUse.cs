using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>A method as a bench has it.</summary>
/// <param name="Name">The bench's own name for it; not empty.</param>
/// <param name="Method">The method.</param>
/// <param name="Repeatability">Relative standard deviation of the bench's own repeat readings; null for the method's default.</param>
public sealed record MethodInUse(string Name, Method Method, Percentage? Repeatability)
{
    /// <summary>The bench's own name for it; not empty.</summary>
    /// <exception cref="ArgumentException">It is blank.</exception>
    public string Name { get; init => field = Guard.NotBlank(value, nameof(Name)); } = Guard.NotBlank(Name);

    /// <summary>The repeatability in force.</summary>
    public Percentage RepeatabilityInForce => Repeatability ?? Method.Repeatability;
}
