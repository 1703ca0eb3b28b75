namespace Viscolog.Tests.Support;

/// <summary>Compares text with a stored file; with VISCOLOG_ACCEPT=1 in the environment it stores instead.</summary>
internal static class Golden
{
    public static void Matches(string name, string actual)
    {
        var path = Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Expected", name);
        if (Environment.GetEnvironmentVariable("VISCOLOG_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
        }

        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), actual);
    }
}
