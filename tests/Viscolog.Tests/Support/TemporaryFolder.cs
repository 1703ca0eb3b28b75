namespace Viscolog.Tests.Support;

/// <summary>A folder of its own that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("viscolog-test-");

    /// <summary>Where it is.</summary>
    public string FullPath => _folder.FullName;

    /// <summary>A path inside it.</summary>
    public string Of(string name) => System.IO.Path.Combine(_folder.FullName, name);

    /// <summary>The names of everything inside.</summary>
    public IReadOnlyList<string> Names => [.. _folder.GetFileSystemInfos().Select(f => f.Name).Order(StringComparer.Ordinal)];

    public void Dispose() => _folder.Delete(recursive: true);
}
