using Viscolog.RunFiles;

namespace Viscolog.Tests.RunFiles;

public sealed class OutcomeTests
{
    [Fact]
    public void Reading_a_file_has_two_outcomes()
        => Assert.Equal(
            [typeof(RunFileOutcome.Read), typeof(RunFileOutcome.Refused)],
            typeof(RunFileOutcome).Assembly.GetTypes().Where(t => t.BaseType == typeof(RunFileOutcome)).OrderBy(t => t.Name, StringComparer.Ordinal));
}
