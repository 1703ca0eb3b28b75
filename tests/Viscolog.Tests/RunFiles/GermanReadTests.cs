using Viscolog.Tests.Support;

namespace Viscolog.Tests.RunFiles;

/// <summary>The same files on a machine that writes decimal commas.</summary>
public sealed class GermanReadTests : ReadTests
{
    public GermanReadTests() => German.Set();
}
