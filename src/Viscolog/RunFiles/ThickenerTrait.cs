using Viscolog.Core.Pots;

namespace Viscolog.RunFiles;

/// <summary>A trait of a thickener that the format knows.</summary>
/// <param name="Name">Its name in a header line.</param>
/// <param name="Take">Takes its text into the thickener.</param>
/// <param name="Show">Its text; null where the thickener has the default.</param>
internal sealed record ThickenerTrait(string Name, Func<Thickener, ValueReader, Place, string, Thickener> Take, Func<Thickener, string?> Show);
