using Viscolog.Tests.Support;

namespace Viscolog.Tests.OilFiles;

public sealed class GermanOilFileTests : OilFileTests
{
    protected override void Enter() => German.Set();
}
