using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.RunFiles;

namespace Viscolog.Tests.Store;

/// <summary>A log's files as bytes, to be put back after each fault.</summary>
internal sealed class Snapshot
{
    private readonly Dictionary<string, byte[]> _files = new(StringComparer.Ordinal);
    private readonly LogPlace _place;

    public Snapshot(LogPlace place)
    {
        _place = place;
        foreach (var path in Directory.GetFiles(place.Folder).Where(p => p != place.Lock && p != place.Holder))
        {
            _files[path] = File.ReadAllBytes(path);
        }
    }

    public byte[] Bytes(string path) => [.. _files[path]];

    public IReadOnlyCollection<string> Paths => _files.Keys;

    /// <summary>Puts the files back as they were, with these instead of their own; null takes a file away.</summary>
    public void PutBack(params (string Path, byte[]? Bytes)[] changed)
    {
        foreach (var path in Directory.GetFiles(_place.Folder).Where(p => p != _place.Lock))
        {
            File.Delete(path);
        }

        foreach (var (path, bytes) in _files)
        {
            File.WriteAllBytes(path, bytes);
        }

        foreach (var (path, bytes) in changed)
        {
            File.Delete(path);
            if (bytes is not null)
            {
                File.WriteAllBytes(path, bytes);
            }
        }
    }

    /// <summary>Whether the file is as it was.</summary>
    public static bool IsUntouched(string path, byte[] bytes) => File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes);

    /// <summary>Everything that the log says, as text.</summary>
    public static string All(BenchLog log)
        => string.Join('\n', log.Runs().Select(r => log.Run(r.Number)!).Select(r => string.Join(' ', r.Rows) + FileText.Write(r.File)));
}
