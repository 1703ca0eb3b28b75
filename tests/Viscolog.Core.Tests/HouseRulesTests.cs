using System.Reflection;
using Viscolog.Core.Advising;
using Viscolog.Core.Batches;
using Viscolog.Core.Charting;
using Viscolog.Core.Checking;
using Viscolog.Core.Fitting;
using Viscolog.Core.Flow;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Xunit;

namespace Viscolog.Core.Tests;

/// <summary>Rules of the house that a machine can see.</summary>
public sealed class HouseRulesTests
{
    private static readonly Assembly Core = typeof(Run).Assembly;

    [Theory]
    [InlineData(typeof(Entry), 6)]
    [InlineData(typeof(BenchAction), 6)]
    [InlineData(typeof(LimitReason), 6)]
    [InlineData(typeof(Appended), 2)]
    [InlineData(typeof(EntryFault), 5)]
    [InlineData(typeof(InstrumentValue), 5)]
    [InlineData(typeof(Conversion), 2)]
    [InlineData(typeof(ConversionRefusal), 10)]
    [InlineData(typeof(ReadingWarning), 9)]
    [InlineData(typeof(BetterChoice), 3)]
    [InlineData(typeof(Geometry), 3)]
    [InlineData(typeof(Target), 2)]
    [InlineData(typeof(FitOutcome), 3)]
    [InlineData(typeof(FlowWarning), 8)]
    [InlineData(typeof(FlowTrouble), 3)]
    [InlineData(typeof(StudyOutcome), 2)]
    [InlineData(typeof(NoAdvice), 3)]
    [InlineData(typeof(AdviceReason), 37)]
    [InlineData(typeof(AdviceWarning), 8)]
    [InlineData(typeof(Contradiction), 3)]
    [InlineData(typeof(StepReason), 13)]
    [InlineData(typeof(AdvisedQuantity), 2)]
    [InlineData(typeof(StandingQuantity), 2)]
    [InlineData(typeof(EvidenceOutcome), 2)]
    [InlineData(typeof(EvidenceWarning), 14)]
    [InlineData(typeof(EvidenceTrouble), 6)]
    [InlineData(typeof(PosteriorOutcome), 2)]
    [InlineData(typeof(Material), 5)]
    [InlineData(typeof(Verdict), 3)]
    [InlineData(typeof(NextStep), 6)]
    [InlineData(typeof(CheckOutcome), 2)]
    [InlineData(typeof(ChartOutcome), 2)]
    [InlineData(typeof(ChartRefusal), 6)]
    [InlineData(typeof(ChartWarning), 4)]
    [InlineData(typeof(CheckRefusal), 4)]
    [InlineData(typeof(CheckWarning), 10)]
    [InlineData(typeof(Doubt), 9)]
    [InlineData(typeof(UncertaintyPart), 6)]
    [InlineData(typeof(ValueGap), 4)]
    [InlineData(typeof(PracticeMove), 6)]
    [InlineData(typeof(PracticeRefusal), 7)]
    [InlineData(typeof(BatchSize), 2)]
    [InlineData(typeof(BatchOutcome), 2)]
    [InlineData(typeof(BatchRefusal), 6)]
    [InlineData(typeof(BatchSource), 5)]
    [InlineData(typeof(BatchNote), 7)]
    public void A_closed_set_has_so_many_sealed_cases(Type set, int cases)
    {
        Assert.True(set.IsAbstract);
        Assert.DoesNotContain(
            set.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic),
            c => c.IsPublic || c.IsFamilyOrAssembly);
        var found = Core.GetTypes().Where(t => t.IsSubclassOf(set)).ToArray();
        Assert.All(found, t => Assert.True(t.IsSealed, t.Name));
        Assert.Equal(cases, found.Length);
    }

    [Fact]
    public void Every_closed_set_is_counted_above()
    {
        var counted = typeof(HouseRulesTests).GetMethod(nameof(A_closed_set_has_so_many_sealed_cases))!
            .GetCustomAttributes<InlineDataAttribute>().Select(a => (Type)a.Data[0]!).ToHashSet();
        Assert.All(
            Core.GetTypes().Where(t => t.IsAbstract && !t.IsSealed && t.GetMethod("<Clone>$") is not null),
            t => Assert.Contains(t, counted));
    }

    [Fact]
    public void Core_uses_MathNet_and_the_framework_alone()
        => Assert.All(
            Core.GetReferencedAssemblies().Select(a => a.Name!),
            name => Assert.True(name.StartsWith("System.", StringComparison.Ordinal) || name is "MathNet.Numerics" or "netstandard", name));

    [Fact]
    public void Quantities_are_readonly_structs()
        => Assert.All(
            Core.GetTypes().Where(t => t is { Namespace: "Viscolog.Core.Quantities", IsValueType: true, IsEnum: false }),
            t => Assert.All(
                t.GetFields(BindingFlags.Instance | BindingFlags.NonPublic), f => Assert.True(f.IsInitOnly, $"{t.Name}.{f.Name}")));
}
