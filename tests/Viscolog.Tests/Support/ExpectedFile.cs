using System.Runtime.CompilerServices;

namespace Viscolog.Tests.Support;

/// <summary>
/// Compares text with a file in Expected; with VISCOLOG_ACCEPT=1 in the environment the file is written anew, to be read before it is
/// committed.
/// </summary>
internal static class ExpectedFile
{
    public static void Check(string name, string actual)
    {
        var path = Path.Combine(Folder(), name);
        if (Environment.GetEnvironmentVariable("VISCOLOG_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
        }

        Assert.True(File.Exists(path), $"no expected file {name}");
        Assert.Equal(File.ReadAllText(path), actual);
    }

    private static string Folder([CallerFilePath] string here = "")
        => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "Expected"));
}
