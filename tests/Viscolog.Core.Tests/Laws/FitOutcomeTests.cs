using Viscolog.Core.Fitting;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

/// <summary>A new case must not slip past those who handle the set.</summary>
public sealed class FitOutcomeTests
{
    [Fact]
    public void The_set_of_outcomes_has_three_sealed_cases()
    {
        Type[] cases = [.. typeof(FitOutcome).Assembly.GetTypes().Where(type => type.BaseType == typeof(FitOutcome))];
        Assert.Equal("Converged Impossible NotConverged", string.Join(' ', cases.Select(type => type.Name).Order(StringComparer.Ordinal)));
        Assert.All(cases, type => Assert.True(type.IsSealed));
    }
}
