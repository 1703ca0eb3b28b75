using System.Diagnostics;
using System.Text;
using Viscolog.Cli;
using Viscolog.Tests.Support;
using Viscolog.Text;

namespace Viscolog.Tests.Cli;

/// <summary>Output that goes nowhere: one line where one can be said, exit code 1, never an abort or a fault of ours.</summary>
public sealed class ClosedOutputTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("--help")]
    [InlineData("advise", "--help")]
    [InlineData("--version")]
    [InlineData("runs")]
    [InlineData("runs", "--json")]
    [InlineData("convert", "60", "--method", "iso-2431-4")]
    public void A_full_device_ends_with_1_and_a_line(params string[] call)
    {
        using var full = new FullWriter(new IOException("No space left on device"));
        var (code, said) = Run(full, call);
        Assert.Equal((1, "the output can't be written: No space left on device\n"), (code, said));
    }

    /// <summary>There is nobody left to tell.</summary>
    [Fact]
    public void A_pipe_whose_reader_has_gone_ends_well()
    {
        using var gone = new FullWriter(new IOException("Broken pipe", 32));
        Assert.Equal((0, ""), Run(gone, ["--help"]));
    }

    /// <summary>The runtime gives a free number to files of its own; what is written must not end up there.</summary>
    [Theory]
    [InlineData("import RUN --log LOG >&-", 1)]
    [InlineData("import RUN --log LOG >&- 2>&-", 1)]
    [InlineData("--help >&-", 1)]
    [InlineData("--help >/dev/full", 1)]
    [InlineData("import RUN --log LOG 2>&-", 0)]
    [InlineData("import RUN --log LOG <&-", 0)]
    [InlineData("practice demo --stepwise --brief --pot easy <&-", 0)]
    public void A_closed_stream_is_told_of_before_anything_is_done(string call, int code)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the shell's words");
        var log = _folder.Of("log");
        var program = Path.Combine(AppContext.BaseDirectory, "viscolog.dll");
        var line = "dotnet " + program + " " + call.Replace("RUN", Checkout.Sample("lantern-gel-06.csv"), StringComparison.Ordinal)
            .Replace("LOG", log, StringComparison.Ordinal);
        var start = new ProcessStartInfo("sh", ["-c", line])
        {
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        using var shell = Process.Start(start)!;
        var said = shell.StandardError.ReadToEnd();
        shell.StandardOutput.ReadToEnd();
        shell.WaitForExit();
        Assert.True(shell.ExitCode == code, $"{shell.ExitCode}: {said}");
        Assert.Equal(code == 0 && call.Contains("LOG", StringComparison.Ordinal), Path.Exists(log));
        Assert.Equal(code == 1 && !call.Contains("2>&-", StringComparison.Ordinal), said.Contains("output", StringComparison.Ordinal));
        if (Path.Exists(log))
        {
            Assert.Equal(0, Called.In(log, "verify").Code);
        }
    }

    private static (int Code, string Said) Run(FullWriter full, string[] call)
    {
        using var error = new StringWriter();
        using var output = new TerminalWriter(full);
        using var errorWriter = new TerminalWriter(error);
        var log = Directory.CreateTempSubdirectory("viscolog-test-").FullName;
        try
        {
            Called.In(log, "import", Checkout.Sample("lantern-gel-06.csv"));
            var code = CommandLine.Run(call, new(output, errorWriter, new(80)), new(_ => log, TimeProvider.System));
            return (code, error.ToString());
        }
        finally
        {
            Directory.Delete(log, recursive: true);
        }
    }

    /// <summary>Takes everything and fails when it is to be written.</summary>
    private sealed class FullWriter(IOException fault) : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value)
        {
        }

        public override void Flush() => throw fault;
    }
}
