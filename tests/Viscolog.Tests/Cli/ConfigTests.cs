using Viscolog.Cli;
using Viscolog.Cli.Calls;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;
using Viscolog.Text;

namespace Viscolog.Tests.Cli;

/// <summary>The user's configuration file.</summary>
public sealed class ConfigTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Config => _folder.Of("config.txt");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void What_it_sets_is_used_where_the_call_says_nothing()
    {
        File.WriteAllText(Config, $"# mine\nlog: {_folder.Of("mine")}\nrisk: 40\nascii: yes\n");
        Assert.Equal(0, Run("import", Checkout.Sample("lantern-gel-06.csv")).Code);
        Assert.True(Directory.Exists(_folder.Of("mine")));
        Assert.Equal(0, Run("import", Checkout.Sample("lantern-gel-06.csv"), "--log", _folder.Of("other")).Code);
        Assert.True(Directory.Exists(_folder.Of("other")));
        var (bold, plain) = (
            Run("advise", Checkout.Sample("lantern-gel-07.csv")), Run("advise", Checkout.Sample("lantern-gel-07.csv"), "--risk", "4.5"));
        Assert.NotEqual(bold.Output, plain.Output, StringComparer.Ordinal);
        plain.IsAscii();
    }

    [Fact]
    public void The_environment_goes_before_it()
    {
        File.WriteAllText(Config, $"log: {_folder.Of("mine")}\n");
        Assert.Equal(0, RunWith(_folder.Of("named"), "import", Checkout.Sample("lantern-gel-06.csv")).Code);
        Assert.Equal(["config.txt", "named"], _folder.Names, StringComparer.Ordinal);
        Assert.Contains("$VISCOLOG_LOG", RunWith(_folder.Of("named"), "config").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_shown_and_changed_by_a_command()
    {
        Assert.Contains("(not there yet)", Run("config").Output, StringComparison.Ordinal);
        Assert.Equal(0, Run("config", "risk=3", "color=no").Code);
        Assert.Equal("risk: 3\ncolor: no\n", File.ReadAllText(Config));
        Assert.Matches("risk +3 +the file", Run("config").Output);
        Assert.Equal(0, Run("config", "risk=").Code);
        Assert.Matches("risk +4.5 +the default", Run("config").Output);
        Assert.Equal("color: no\n", File.ReadAllText(Config));
    }

    [Theory]
    [InlineData("risk=60")]
    [InlineData("rsk=3")]
    [InlineData("color=maybe")]
    [InlineData("risk")]
    public void What_it_can_t_say_is_refused(string word)
    {
        Assert.Equal(1, Run("config", word).Code);
        Assert.False(File.Exists(Config));
    }

    [Fact]
    public void A_line_that_can_t_be_used_is_named_and_the_rest_is()
    {
        File.WriteAllText(Config, "rsk: 3\nrisk: 60\ncolour: no\n");
        var called = Run("config");
        Assert.Equal(0, called.Code);
        Assert.Contains(
            "config.txt, line 1: read 'rsk: 3', expected a key: log, risk, color, ascii, theme, mouse, language, take; it is not used",
            called.Error,
            StringComparison.Ordinal);
        Assert.Contains("line 2: read 'risk: 60', expected risk:", called.Error, StringComparison.Ordinal);
        Assert.Matches("color +no +the file", called.Output);
        Assert.Empty(Run("config", "--quiet").Error);
    }

    private Called Run(params string[] args) => RunWith(null, args);

    private Called RunWith(string? log, params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var outputWriter = new TerminalWriter(output);
        using var errorWriter = new TerminalWriter(error);
        var code = CommandLine.Run(
            args,
            new(outputWriter, errorWriter, new(80)),
            new(name => name == Settings.Variable ? Config : name == LogPlace.Variable ? log : null, TimeProvider.System));
        return new(code, output.ToString(), error.ToString());
    }
}
