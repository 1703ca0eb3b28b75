namespace Viscolog.Tests.Support;

/// <summary>Finds the project's own files.</summary>
internal static class Project
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    private static string Find(string folder)
        => File.Exists(Path.Combine(folder, "Viscolog.sln"))
            ? folder
            : Find(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(folder))!);
}
