using Viscolog.Tests.Support;

namespace Viscolog.Tests.RunFiles;

/// <summary>The same writing on a machine that writes decimal commas.</summary>
public sealed class GermanWriteTests : WriteTests
{
    public GermanWriteTests() => German.Set();
}
