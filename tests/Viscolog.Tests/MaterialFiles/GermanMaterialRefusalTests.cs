using Viscolog.Tests.Support;

namespace Viscolog.Tests.MaterialFiles;

/// <summary>The same refusals on a machine that writes decimal commas.</summary>
public sealed class GermanMaterialRefusalTests : MaterialRefusalTests
{
    public GermanMaterialRefusalTests() => German.Set();
}
