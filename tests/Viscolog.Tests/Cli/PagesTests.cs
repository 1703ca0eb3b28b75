using System.Text.RegularExpressions;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>What the documentation names is there: pages, pictures, sections, commands and their options, samples, benchmarks.</summary>
public sealed partial class PagesTests
{
    public static TheoryData<string> All => [.. Pages.All];

    [Theory]
    [MemberData(nameof(All))]
    public void Every_link_leads_somewhere(string page)
    {
        var here = Path.GetDirectoryName(page)!;
        var dead = Pages.Links(page).Where(l => !l.Contains("://", StringComparison.Ordinal)).Where(l =>
        {
            var (file, anchor) = l.Split('#') is [var f, var a] ? (f, a) : (l, null);
            var target = file.Length == 0 ? page : Path.Combine(here, file);
            return !Path.Exists(Checkout.At(target))
                || (anchor is not null && !Pages.Anchors(target).Contains(anchor, StringComparer.OrdinalIgnoreCase));
        });
        Assert.Empty(dead);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Every_command_names_a_command_and_options_that_there_are(string page)
    {
        var wrong = Lines(page).Select(c => Call().Match(c)).Where(m => m.Success).Select(m => m.Groups["arguments"].Value)
            .SelectMany(
                call => Called.Complaints(call, isWhole: call.Contains(" -", StringComparison.Ordinal)).Select(c => $"{call}: {c}"));
        Assert.Empty(wrong);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Every_sample_that_is_named_is_there(string page)
        => Assert.All(Sample().Matches(Pages.Text(page)), m => Assert.True(Path.Exists(Checkout.At(m.Value)), m.Value));

    /// <summary>The benchmarks are a program of their own, so that its source is asked.</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void Every_benchmark_and_its_options_are_there(string page)
    {
        var sources = string.Concat(
            Directory.GetFiles(Checkout.At("tests/Viscolog.Benchmarks"), "*.cs", SearchOption.AllDirectories).Select(File.ReadAllText));
        var words = Lines(page).Select(c => Benchmark().Match(c)).Where(m => m.Success).Select(m => m.Groups["arguments"].Value.Split(' '))
            .SelectMany(c => c.Where((w, i) => i == 0 || w.StartsWith("--", StringComparison.Ordinal)));
        Assert.All(words, w => Assert.Contains($"\"{w}\"", sources, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_page_and_section_that_the_program_or_a_page_refers_to_is_there()
    {
        string[] texts =
        [
            .. Pages.All.Select(Pages.Text),
            .. Directory.GetFiles(Checkout.At("src"), "*.cs", SearchOption.AllDirectories).Select(File.ReadAllText),
        ];
        var named = texts.SelectMany(t => Section().Matches(t)).ToList();
        Assert.NotEmpty(named);
        Assert.All(named, m =>
        {
            var page = "docs/" + m.Groups["page"].Value;
            Assert.True(File.Exists(Checkout.At(page)), page);
            if (m.Groups["number"].Success)
            {
                Assert.Contains($"\n## {m.Groups["number"].Value} ", Pages.Text(page), StringComparison.Ordinal);
            }
        });
    }

    private static IEnumerable<string> Lines(string page) => Pages.Calls(page).SelectMany(c => c.Split('\n'));

    [GeneratedRegex(@"^(dotnet run --project src/Viscolog --|viscolog)(?<arguments>( [^#]*)?)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Call();

    [GeneratedRegex(@"sample-runs/[\w./-]*\w", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Sample();

    [GeneratedRegex(@"--project tests/Viscolog\.Benchmarks -- (?<arguments>.+)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Benchmark();

    [GeneratedRegex(@"docs/(?<page>[a-z-]+\.md)`?(, section (?<number>\d+))?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Section();
}
