using System.Diagnostics;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Sheets;

/// <summary>Every sample run to a spreadsheet and back, where LibreOffice is installed.</summary>
public sealed class LiveSheetTests
{
    [Theory]
    [InlineData("xlsx", ".xlsx")]
    [InlineData("csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false", ".csv")]
    [InlineData("csv:Text - txt - csv (StarCalc):9,34,65535,1,,0,true,false", ".csv")]
    public void Sample_runs_come_back_without_the_loss_of_a_cell(string format, string ending)
    {
        using var folder = new TemporaryFolder();
        var (first, second) = (folder.Of("first"), folder.Of("second"));
        string[] samples =
        [
            .. new[] { "", "checks", "methods", "pair", "materials", "oils" }.Select(s => Path.Combine(Checkout.Root, "sample-runs", s)),
        ];
        Done(Called.With(["import", .. samples, "--log", first]));
        Done(Called.With("export", "--all", "--xlsx", "-o", folder.Of("books"), "--log", first));
        Convert(format, folder.Of("saved"), folder.Of("profile"), Directory.GetFiles(folder.Of("books")));
        Done(Called.With(["import", .. Directory.GetFiles(folder.Of("saved"), "*" + ending), "--log", second]));
        Done(Called.With("export", "--all", "-o", folder.Of("before"), "--log", first));
        Done(Called.With("export", "--all", "-o", folder.Of("after"), "--log", second));
        Assert.Equal(Texts(folder.Of("before")), Texts(folder.Of("after")), StringComparer.Ordinal);
    }

    private static void Done(Called called) => Assert.True(called.Code == 0, called.Error);

    private static IEnumerable<string> Texts(string folder)
        => Directory.GetFiles(folder).Order(StringComparer.Ordinal).Select(f => Path.GetFileName(f) + "\n" + File.ReadAllText(f));

    private static void Convert(string format, string to, string profile, string[] files)
    {
        var start = new ProcessStartInfo("soffice")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        string[] call = ["--headless", "-env:UserInstallation=" + new Uri(profile), "--convert-to", format, "--outdir", to, .. files];
        foreach (var argument in call)
        {
            start.ArgumentList.Add(argument);
        }

        try
        {
            using var process = Process.Start(start)!;
            // Errors are read beside the rest: a full pipe would stop the other program.
            var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            process.StandardOutput.ReadToEnd();
            Assert.True(process.WaitForExit(120_000) && process.ExitCode == 0, errors.Result);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("LibreOffice is not installed (no program 'soffice'): the stored files were read, a live round trip was not tried");
        }
    }
}
