using Viscolog.Tests.Support;

namespace Viscolog.Tests.RunFiles;

/// <summary>The same laws on a machine that writes decimal commas.</summary>
public sealed class GermanRoundTripTests : RoundTripTests
{
    protected override void Enter() => German.Set();
}
