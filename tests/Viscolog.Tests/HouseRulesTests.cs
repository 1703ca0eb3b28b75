using System.Reflection;

namespace Viscolog.Tests;

/// <summary>Rules of the shell that a machine can see.</summary>
public sealed class HouseRulesTests
{
    private static readonly Assembly Shell = typeof(Viscolog.Cli.CommandLine).Assembly;

    [Fact]
    public void The_executable_shows_nothing_to_other_programs()
        => Assert.Empty(Shell.GetExportedTypes());

    [Theory]
    [InlineData("Viscolog.Plots", "Viscolog.Cli", "Viscolog.RunFiles")]
    [InlineData("Viscolog.RunFiles", "Viscolog.Cli", "Viscolog.Plots")]
    public void Files_and_pictures_know_neither_commands_nor_each_other(string room, params string[] closed)
    {
        const BindingFlags all = BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        foreach (var type in Shell.GetTypes().Where(t => t.Namespace == room))
        {
            var used = type.GetFields(all).Select(f => f.FieldType)
                .Concat(type.GetMethods(all).SelectMany(m => m.GetParameters().Select(p => p.ParameterType).Append(m.ReturnType)));
            Assert.DoesNotContain(used, t => closed.Contains(t.Namespace, StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Commands_hold_no_plotting_type()
        => Assert.DoesNotContain(
            Shell.GetTypes().Where(t => t.Namespace == "Viscolog.Cli").SelectMany(t => t.GetFields(BindingFlags.Instance | BindingFlags.Static | BindingFlags.NonPublic)),
            f => f.FieldType.Assembly.GetName().Name!.StartsWith("OxyPlot", StringComparison.Ordinal));
}
