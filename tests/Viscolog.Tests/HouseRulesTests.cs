using System.Reflection;
using Viscolog.Reports;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tables;
using Viscolog.Tui.Batches;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Practice;
using Viscolog.Tui.Runs;

namespace Viscolog.Tests;

/// <summary>Rules of the shell that a machine can see.</summary>
public sealed class HouseRulesTests
{
    private const BindingFlags All =
        BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    private static readonly Assembly Shell = typeof(Viscolog.Cli.CommandLine).Assembly;

    [Fact]
    public void The_executable_shows_nothing_to_other_programs()
        => Assert.Empty(Shell.GetExportedTypes());

    [Theory]
    [InlineData(typeof(TableOutcome<>), 2)]
    [InlineData(typeof(Column), 3)]
    [InlineData(typeof(Block), 8)]
    [InlineData(typeof(Viscolog.Plots.Element), 13)]
    [InlineData(typeof(BenchEvent), 32)]
    [InlineData(typeof(Viscolog.Feeds.FeedEvent), 4)]
    [InlineData(typeof(Viscolog.Tui.Materials.LearnEvent), 7)]
    [InlineData(typeof(Viscolog.Feeds.LinePlace), 2)]
    [InlineData(typeof(Viscolog.Feeds.LineOutcome), 3)]
    [InlineData(typeof(Viscolog.Feeds.LineSource), 5)]
    [InlineData(typeof(BenchEffect), 4)]
    [InlineData(typeof(BenchChange), 3)]
    [InlineData(typeof(Viscolog.Tui.Pattern.PickEvent), 3)]
    [InlineData(typeof(ChartEvent), 3)]
    [InlineData(typeof(CheckEvent), 8)]
    [InlineData(typeof(TrendEvent), 6)]
    [InlineData(typeof(MaterialsEvent), 14)]
    [InlineData(typeof(RunsEvent), 21)]
    [InlineData(typeof(RunsEffect), 8)]
    [InlineData(typeof(PracticeEvent), 6)]
    [InlineData(typeof(DemoEvent), 8)]
    [InlineData(typeof(ScoresEvent), 3)]
    [InlineData(typeof(GameEvent), 14)]
    [InlineData(typeof(GameEffect), 2)]
    [InlineData(typeof(LogRecord), 13)]
    [InlineData(typeof(Viscolog.Store.RunEdit), 3)]
    [InlineData(typeof(Viscolog.Store.RunMatch), 2)]
    [InlineData(typeof(WriteOutcome), 4)]
    [InlineData(typeof(Viscolog.Cli.Json.Answer), 26)]
    public void A_closed_set_has_so_many_sealed_cases(Type set, int cases)
    {
        var found = Shell.GetTypes()
            .Where(t => t.IsSubclassOf(set) || (t.BaseType is { IsGenericType: true } b && b.GetGenericTypeDefinition() == set)).ToArray();
        Assert.All(found, t => Assert.True(t.IsSealed, t.Name));
        Assert.Equal(cases, found.Length);
    }

    [Fact]
    public void Every_closed_set_is_counted_above()
    {
        var counted = typeof(HouseRulesTests).GetMethod(nameof(A_closed_set_has_so_many_sealed_cases))!
            .GetCustomAttributes<InlineDataAttribute>().Select(a => (Type)a.Data[0]!).ToHashSet();
        Assert.All(
            Shell.GetTypes().Where(t => t.IsAbstract && !t.IsSealed && t.GetMethod("<Clone>$", All) is not null),
            t => Assert.Contains(t, counted));
    }
}
