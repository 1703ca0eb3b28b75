using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The README and the samples' README show real output and commands that work.</summary>
public sealed partial class ReadmeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    public static TheoryData<string> Examples => [.. Shown()];

    private static IEnumerable<string> Shown()
        => Readmes().SelectMany(text => Command().Matches(text)).Select(m => m.Groups["arguments"].Value.Trim())
            .Distinct(StringComparer.Ordinal);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_works(string arguments)
    {
        if (arguments.Contains("my-log", StringComparison.Ordinal) && !arguments.StartsWith("import", StringComparison.Ordinal))
        {
            // The text before it has imported something.
            Works("import sample-runs --log my-log");
        }

        Works(arguments);
    }

    [Theory]
    [InlineData("")]
    [InlineData("advise")]
    [InlineData("fit")]
    [InlineData("plot")]
    [InlineData("batch")]
    [InlineData("report")]
    [InlineData("check")]
    [InlineData("trend")]
    [InlineData("drift")]
    [InlineData("import")]
    [InlineData("runs")]
    [InlineData("show")]
    [InlineData("export")]
    [InlineData("practice")]
    [InlineData("practice demo")]
    [InlineData("practice play")]
    [InlineData("practice scores")]
    [InlineData("practice replay")]
    [InlineData("backup")]
    [InlineData("restore")]
    [InlineData("verify")]
    public void Help_ends_with_an_example_that_works_in_a_fresh_checkout(string command)
    {
        var help = Called.With([.. command.Split(' ').Append("--help").Where(w => w.Length > 0)]).Output;
        var example = help.TrimEnd().Split('\n')[^1].Replace(" && ", "\n", StringComparison.Ordinal);
        var commands = Command().Matches(example);
        Assert.NotEmpty(commands);
        foreach (var arguments in commands.Select(c => c.Groups["arguments"].Value.Trim()))
        {
            // What a README shows as well and needs nothing imported is tried above.
            if (arguments.Contains("my-log", StringComparison.Ordinal) || !Shown().Contains(arguments, StringComparer.Ordinal))
            {
                Works(arguments);
            }
        }
    }

    private void Works(string arguments)
    {
        var words = arguments.Split(' ')
            .Select(w => w.StartsWith("sample-runs", StringComparison.Ordinal) ? Path.Combine(Checkout.Root, w) : w)
            .Select(w => w.EndsWith(".svg", StringComparison.Ordinal) || w.StartsWith("my-", StringComparison.Ordinal) ? Path.Combine(_folder, w) : w)
            .Select(w => w.Contains('*', StringComparison.Ordinal) ? Directory.GetFiles(Path.GetDirectoryName(w)!, Path.GetFileName(w)).Single() : w);
        var called = Called.With([.. words]);
        // A busy machine takes over a second here and there, and then how far it has come is told.
        var complaints = called.Error.Split('\n').Where(l => l.Length > 0 && !ProgressPattern().IsMatch(l));
        Assert.Equal((0, ""), (called.Code, string.Join('\n', complaints)));
    }

    [Theory]
    [InlineData("advise-lantern-gel-07")]
    [InlineData("advise-lantern-gel-08-read-early")]
    [InlineData("advise-harbour-gel-02-over")]
    [InlineData("advise-thread-gel-02")]
    [InlineData("check-lantern-gel-21")]
    [InlineData("practice-demo-brief")]
    public void Shown_output_is_the_stored_one(string name)
    {
        var stored = File.ReadAllText(Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Expected", "cli", name + ".txt"));
        Assert.Contains($"```\n{stored}```", Readmes().First(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_of_the_batch_sheet_is_the_stored_one()
    {
        var sheet = File.ReadAllText(Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Expected", "cli", "batch-lantern-gel-06.txt"));
        var table = sheet[sheet.IndexOf("  step  pour", StringComparison.Ordinal)..];
        Assert.Contains($"```\n{table[..table.IndexOf("\n\n", StringComparison.Ordinal)]}\n```", Readmes().First(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_says_what_plot_draws()
    {
        // Words and figures, not coordinates: those may differ in the last digit between processors.
        var drawn = Path.Combine(_folder, "drawn.svg");
        Assert.Equal(0, Called.With("plot", Checkout.Sample("lantern-gel-07.csv"), "-o", drawn).Code);
        Assert.Equal(Words(Path.Combine(Checkout.Root, "docs", "pictures", "lantern-gel-07.svg")), Words(drawn));
    }

    [Fact]
    public void The_practice_picture_says_what_the_demonstration_draws()
    {
        var drawn = Path.Combine(_folder, "practice.svg");
        Assert.Equal(0, Called.With("practice", "demo", "--pot", "slow", "--seed", "3", "--brief", "-o", drawn).Code);
        Assert.Equal(Words(Path.Combine(Checkout.Root, "docs", "pictures", "practice-slow-3.svg")), Words(drawn));
    }

    private static string[] Words(string path)
    {
        using var reader = XmlReader.Create(path, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null });
        return [.. XDocument.Load(reader).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
    }

    private static IEnumerable<string> Readmes()
        => new[] { "README.md", Path.Combine("sample-runs", "README.md") }.Select(f => File.ReadAllText(Path.Combine(Checkout.Root, f)).ReplaceLineEndings("\n"));

    [GeneratedRegex("^[a-z ]+: [0-9]+ %$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ProgressPattern();

    [GeneratedRegex("dotnet run --project src/Viscolog -- (?<arguments>[^`\n]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Command();
}
