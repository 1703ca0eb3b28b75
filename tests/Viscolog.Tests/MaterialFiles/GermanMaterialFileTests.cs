using Viscolog.Tests.Support;

namespace Viscolog.Tests.MaterialFiles;

public sealed class GermanMaterialFileTests : MaterialFileTests
{
    protected override void Enter() => German.Set();
}
