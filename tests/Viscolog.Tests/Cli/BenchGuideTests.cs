using System.Text.RegularExpressions;
using System.Xml.Linq;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The bench guide shows commands that work and drawings that are there.</summary>
public sealed partial class BenchGuideTests
{
    private static readonly string Guide = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "bench-guide.md"));

    [Fact]
    public void Every_command_works()
    {
        string[] commands = [.. Command().Matches(Guide).Select(m => m.Groups["arguments"].Value)];
        Assert.Equal(2, commands.Length);
        Assert.All(commands, c => Assert.Equal((0, ""), (Called.With(c.Split(' ')).Code, Called.With(c.Split(' ')).Error)));
    }

    [Fact]
    public void Every_drawing_is_there_and_is_described()
    {
        var drawings = Drawing().Matches(Guide);
        Assert.Equal(3, drawings.Count);
        Assert.All(drawings, d =>
        {
            Assert.True(d.Groups["words"].Value.Length > 40);
            Assert.Equal("svg", XDocument.Load(Path.Combine(Checkout.Root, "docs", d.Groups["file"].Value)).Root!.Name.LocalName);
        });
    }

    [GeneratedRegex("`viscolog (?<arguments>convert [^`]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Command();

    [GeneratedRegex(@"!\[(?<words>[^\]]+)\]\((?<file>[^)]+)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Drawing();
}
