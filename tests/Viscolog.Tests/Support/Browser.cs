using System.Diagnostics;
using System.Net;
using System.Text.Json;

namespace Viscolog.Tests.Support;

/// <summary>Chromium without a window, where this machine has it.</summary>
internal static class Browser
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>Its program; null where there is none.</summary>
    private static string? Program { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => new[] { "chromium", "chromium-browser", "chrome" }.Select(name => Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists);

    /// <summary>Leaves a test where there is no browser.</summary>
    public static void Need() => Assert.SkipWhen(Program is null, "no Chromium here: pages are not looked at in a browser");

    /// <summary>How far each page reaches to the right in a window of such a width, in px.</summary>
    public static int[] Reaches(TemporaryFolder folder, int width, IReadOnlyCollection<string> pages)
    {
        // Its window has a least width; a frame has none, and a page in one asks for the frame's.
        var frames = string.Concat(
            pages.Select(
                p => FormattableString.Invariant(
                    $"<iframe width=\"{width}\" height=\"600\" style=\"border:0\" srcdoc=\"{WebUtility.HtmlEncode(p)}\"></iframe>")));
        const string Reach = "[...document.querySelectorAll('iframe')].map(f => f.contentDocument.documentElement.scrollWidth)";
        File.WriteAllText(folder.Of("frames.html"), $$"""
            <!DOCTYPE html><meta charset="utf-8"><title></title>{{frames}}
            <script>onload = () => document.title = JSON.stringify({{Reach}});</script>
            """);
        var dom = Run(folder, "--dump-dom", folder.Of("frames.html"));
        var start = dom.IndexOf("<title>", StringComparison.Ordinal) + "<title>".Length;
        return JsonSerializer.Deserialize<int[]>(dom[start..dom.IndexOf("</title>", StringComparison.Ordinal)])!;
    }

    /// <summary>A page as it prints.</summary>
    public static byte[] Print(TemporaryFolder folder, string page)
    {
        Run(folder, "--no-pdf-header-footer", "--print-to-pdf=" + folder.Of("print.pdf"), page);
        return File.ReadAllBytes(folder.Of("print.pdf"));
    }

    private static string Run(TemporaryFolder folder, params string[] args)
    {
        string[] all =
        [
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--user-data-dir=" + folder.Of("browser"),
            .. args[..^1],
            new Uri(args[^1]).AbsoluteUri,
        ];
        using var browser = Process.Start(
            new ProcessStartInfo(Program!, all) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = browser.StandardError.ReadToEndAsync();
        var output = browser.StandardOutput.ReadToEndAsync();
        if (!browser.WaitForExit(Patience))
        {
            browser.Kill(entireProcessTree: true);
            Assert.Fail("the browser did not end");
        }

        Assert.True(browser.ExitCode == 0, errors.Result);
        return output.Result;
    }
}
