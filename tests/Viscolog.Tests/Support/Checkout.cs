namespace Viscolog.Tests.Support;

/// <summary>Places in the checkout.</summary>
internal static class Checkout
{
    /// <summary>The project's folder: where the solution stands.</summary>
    public static string Root { get; } = Find();

    /// <summary>A file or folder by its path from the project's folder.</summary>
    public static string At(string path) => Path.Combine(Root, path);

    public static string Sample(string name) => Path.Combine(Root, "sample-runs", name);

    private static string Find()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Viscolog.sln")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("no Viscolog.sln above the tests");
        }

        return folder;
    }
}
