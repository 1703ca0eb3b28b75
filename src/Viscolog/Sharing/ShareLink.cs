using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Viscolog.Output;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Sharing;

/// <summary>That a log is shared, and how: a file of its own beside the journal, with no password in it.</summary>
/// <param name="Address">Where the shared database is.</param>
/// <param name="Bench">What this bench is called there.</param>
/// <param name="Key">What shows that it is this one; nobody else has it.</param>
/// <param name="Life">Which of the log's lives this is, from 1.</param>
internal sealed record ShareLink(ShareAddress Address, string Bench, byte[] Key, int Life)
{
    private const int KeyLength = 32;

    /// <summary>What the server keeps of the key.</summary>
    public byte[] KeySum => SHA256.HashData(Key);

    /// <summary>Where it is kept.</summary>
    public static string PathOf(LogPlace place) => Path.Combine(place.Folder, "readings.share");

    /// <summary>A new one.</summary>
    public static ShareLink New(ShareAddress address, string bench) => new(address, bench, RandomNumberGenerator.GetBytes(KeyLength), 1);

    /// <summary>Whether a bench can have that name.</summary>
    public static bool CanName(string name)
        => name.Length is > 0 and <= 60 && name.Trim().Length == name.Length && !name.Any(char.IsControl);

    /// <summary>The link of a log; neither it nor a reason where it is not shared.</summary>
    public static (ShareLink? Link, string? Fault) Read(LogPlace place)
    {
        var path = PathOf(place);
        try
        {
            if (!File.Exists(path))
            {
                return (null, null);
            }

            var values = File.ReadAllLines(path).Select(l => l.Split(": ", 2)).Where(p => p.Length == 2)
                .ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);
            var key = Convert.FromHexString(values["key"]);
            return ShareAddress.Read(values["address"]).Is(out var address, out var fault)
                && CanName(values["bench"]) && key.Length == KeyLength
                ? (new(address, values["bench"], key, int.Parse(values["life"], NumberStyles.None, CultureInfo.InvariantCulture)), null)
                : (null, $"{path}: {fault ?? "it is not as it was written"}; 'viscolog share leave' forgets it, then join again");
        }
        catch (Exception e) when (
            e is IOException or UnauthorizedAccessException or FormatException or KeyNotFoundException or ArgumentException
                or OverflowException)
        {
            return (null, OneLine.Of($"{path} can't be read ({e.Message}); 'viscolog share leave' forgets it, then join again"));
        }
    }

    /// <summary>Keeps it, for its owner alone.</summary>
    /// <exception cref="IOException">It can't be written.</exception>
    public void Write(LogPlace place)
    {
        var path = PathOf(place);
        if (!File.Exists(path))
        {
            Disk.New(path, OperatingSystem.IsWindows() ? null : UnixFileMode.UserRead | UnixFileMode.UserWrite).Dispose();
        }

        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"address: {Address.Text()}\nbench: {Bench}\nkey: {Convert.ToHexStringLower(Key)}\nlife: {Life}\n");
        WholeFile.Write(path, Encoding.UTF8.GetBytes(text), replace: true);
    }

    /// <summary>Forgets it.</summary>
    /// <exception cref="IOException">It can't be deleted.</exception>
    public static void Delete(LogPlace place) => File.Delete(PathOf(place));
}
