using Viscolog.Tests.Support;

namespace Viscolog.Tests.RunFiles;

/// <summary>The same refusals on a machine that writes decimal commas.</summary>
public sealed class GermanRefusalTests : RefusalTests
{
    public GermanRefusalTests() => German.Set();
}
