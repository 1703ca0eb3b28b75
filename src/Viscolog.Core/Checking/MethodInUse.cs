using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>A method as a bench has it.</summary>
/// <param name="Name">The bench's own name for it; not empty.</param>
/// <param name="Method">The method.</param>
/// <param name="Repeatability">Relative standard deviation of the bench's own repeat readings; null for the method's default.</param>
public sealed record MethodInUse(string Name, Method Method, Percentage? Repeatability);
