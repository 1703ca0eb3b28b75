using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.Store.Copy;

/// <summary>Tells runs apart, the same way on every machine.</summary>
internal static class RunIdentity
{
    private const char Between = '\u001f';

    /// <summary>What a run from a file without a UUID is known by: who, of what, with what.</summary>
    public static string Key(RunFile file)
    {
        var run = file.Run;
        string?[] parts = [run.Name, run.Base.Name, run.Lot, run.Operator, FileNumbers.Show(run.BaseMass.Grams)];
        return string.Join(Between, parts.Concat(run.Thickeners.Select(t => t.Name)));
    }

    /// <summary>
    /// The UUID of a run from a file without one (version 8 of RFC 9562, from a SHA-256): a function of its key and these rows, so two
    /// benches that import one file agree.
    /// </summary>
    public static Guid Of(RunFile file, IEnumerable<FileRow> rows)
        => Of(file, rows.SelectMany(r => Columns.All.Select(c => c.Show(r with { Replaces = false }) ?? "")));

    /// <summary>
    /// The identities that a run from a file without one may get, the plainest first: by its first row, by all its rows, by what stands
    /// in unknown columns as well, and by a number behind that. The first that no other run of a log has is its own.
    /// </summary>
    public static IEnumerable<Guid> Candidates(RunToImport run)
    {
        var file = run.Header;
        yield return Of(file, run.Rows.Take(1));
        yield return Of(file, run.Rows);
        for (var number = 1; ; number++)
        {
            var more = run.Rows.SelectMany(r => Columns.All.Select(c => c.Show(r) ?? "").Concat(r.Unknown));
            yield return Of(file, more.Concat(file.UnknownColumns).Append(number.ToString(CultureInfo.InvariantCulture)));
        }
    }

    private static Guid Of(RunFile file, IEnumerable<string> cells)
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        sum.AppendData(Encoding.UTF8.GetBytes(Key(file)));
        foreach (var cell in cells)
        {
            sum.AppendData(Encoding.UTF8.GetBytes(Between + cell));
        }

        var hash = sum.GetHashAndReset();
        hash[6] = (byte)((hash[6] & 0x0f) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3f) | 0x80);
        return new(hash.AsSpan(0, 16), bigEndian: true);
    }
}
