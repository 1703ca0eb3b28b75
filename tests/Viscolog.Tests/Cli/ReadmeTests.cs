using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The README and the guides show real output and commands that work.</summary>
public sealed partial class ReadmeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    /// <summary>The commands of each block, and each command between backticks.</summary>
    public static TheoryData<string> Examples
        => [.. Shown()];

    private static IEnumerable<string> Shown()
        => Pages.All.SelectMany(Pages.Calls).Select(c => string.Join('\n', Arguments(c))).Where(c => c.Length > 0)
            .Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> Arguments(string text) => Command().Matches(text).Select(m => m.Groups["arguments"].Value.Trim());

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_works(string block)
    {
        if (block.Contains("my-log", StringComparison.Ordinal) && !block.StartsWith("import", StringComparison.Ordinal))
        {
            // The text before it has imported something.
            Works("import sample-runs --log my-log");
        }

        Assert.All(block.Split('\n'), Works);
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
    [InlineData("template")]
    [InlineData("new")]
    [InlineData("add")]
    [InlineData("void")]
    [InlineData("help")]
    [InlineData("methods")]
    [InlineData("chemistries")]
    [InlineData("shapes")]
    [InlineData("config")]
    [InlineData("completions")]
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
        var commands = Arguments(example).ToList();
        Assert.NotEmpty(commands);
        foreach (var arguments in commands)
        {
            // What a page shows as well and needs nothing imported is tried above.
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
            .Select(
                w => w.EndsWith(".svg", StringComparison.Ordinal) || w.StartsWith("my-", StringComparison.Ordinal)
                    ? Path.Combine(_folder, w)
                    : w)
            .Select(
                w => w.Contains('*', StringComparison.Ordinal)
                    ? Directory.GetFiles(Path.GetDirectoryName(w)!, Path.GetFileName(w)).Single()
                    : w);
        var called = Called.With([.. words]);
        // A busy machine takes over a second here and there, and then how far it has come is told.
        var complaints = called.Error.Split('\n').Where(l => l.Length > 0 && !ProgressPattern().IsMatch(l));
        Assert.Equal((0, ""), (called.Code, string.Join('\n', complaints)));
    }

    /// <summary>Pages whose blocks are commands or output, nothing else.</summary>
    public static TheoryData<string> PagesOfExamples =>
        ["README.md", "docs/examples.md", "docs/first-pot.md", "docs/quality-control.md", "docs/class.md"];

    /// <summary>With VISCOLOG_ACCEPT=1 a block that was stored and has changed since is renewed in the page.</summary>
    [Theory]
    [MemberData(nameof(PagesOfExamples))]
    public void Every_block_is_commands_or_stored_output(string page)
    {
        var stored = Directory.GetFiles(Checkout.At("tests/Viscolog.Tests/Expected"), "*.txt", SearchOption.AllDirectories)
            .Select(f => "\n" + File.ReadAllText(f)).ToList();
        if (Environment.GetEnvironmentVariable("VISCOLOG_ACCEPT") == "1")
        {
            var renewed = Outputs(page)
                .Aggregate(Pages.Text(page), (text, b) => text.Replace(b, Renewed(b, stored), StringComparison.Ordinal));
            File.WriteAllText(Checkout.At(page), renewed);
        }

        Assert.All(Outputs(page), b => Assert.True(stored.Exists(s => s.Contains("\n" + b, StringComparison.Ordinal)), b));
    }

    private static IEnumerable<string> Outputs(string page) => Pages.Blocks(page).Where(b => !b.TrimEnd().Split('\n').All(IsCommand));

    /// <summary>
    /// What is stored now where a block was taken from: the whole of a text that begins alike, or the lines up to an empty one.
    /// </summary>
    private static string Renewed(string block, IEnumerable<string> stored)
    {
        var lines = block.Split('\n');
        var start = "\n" + lines[0] + "\n";
        int Shared(string text) => text.Split('\n').Intersect(lines, StringComparer.Ordinal).Count();
        if (stored.Where(s => s.Contains(start, StringComparison.Ordinal)).MaxBy(Shared) is not { } source)
        {
            return block;
        }

        var from = source.IndexOf(start, StringComparison.Ordinal) + 1;
        return from == 1 ? source[1..] : source[from..(source.IndexOf("\n\n", from, StringComparison.Ordinal) + 1)];
    }

    [Fact]
    public void A_list_of_runs_is_stored()
    {
        // Rows without a time are dated by the clock of the import.
        var clock = new StoppedClock(new(2026, 11, 25, 11, 50, 0, TimeSpan.Zero));
        Assert.Equal(0, Called.In(Path.Combine(_folder, "log"), clock, "import", Path.Combine(Checkout.Root, "sample-runs")).Code);
        ExpectedFile.Check("cli/runs-base.txt", Called.In(Path.Combine(_folder, "log"), clock, "runs", "--base", "Ledge").Output);
    }

    [Fact]
    public void A_check_of_a_logged_batch_is_stored()
    {
        var clock = new StoppedClock(new(2026, 11, 27, 9, 0, 0, TimeSpan.Zero));
        string[] folders = ["materials", "oils", "checks"];
        Assert.Equal(0, Called.In(Path.Combine(_folder, "log"), clock, [.. folders.Select(Checkout.Sample).Prepend("import")]).Code);
        ExpectedFile.Check("cli/check-logged-lantern-gel-21.txt", Called.In(Path.Combine(_folder, "log"), clock, "check", "2").Output);
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

    private static bool IsCommand(string line)
        => line.StartsWith("dotnet ", StringComparison.Ordinal) || line.StartsWith("viscolog", StringComparison.Ordinal);

    [GeneratedRegex("^[a-z ]+: [0-9]+ %$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ProgressPattern();

    [GeneratedRegex("dotnet run --project src/Viscolog -- (?<arguments>[^`\n]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Command();
}
