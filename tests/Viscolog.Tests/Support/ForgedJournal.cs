using System.Globalization;
using System.IO.Hashing;
using System.Text;

namespace Viscolog.Tests.Support;

/// <summary>Changes what a journal says in such a way that every checksum holds.</summary>
internal static class ForgedJournal
{
    /// <summary>Writes a journal anew, each record through a change.</summary>
    /// <param name="path">The journal.</param>
    /// <param name="change">Takes a line's number and its record in JSON; gives the record, or null to leave the line out.</param>
    public static void Change(string path, Func<int, string, string?> change)
    {
        var (text, sum, number) = (new StringBuilder(), "", 0);
        foreach (var (i, line) in File.ReadAllLines(path).Index())
        {
            if (change(i + 1, line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..^9]) is not { } json)
            {
                continue;
            }

            var body = string.Create(CultureInfo.InvariantCulture, $"{++number} {json} ");
            var chained = (sum.Length > 0 ? sum + "\n" : "") + body;
            sum = Crc32.HashToUInt32(Encoding.UTF8.GetBytes(chained)).ToString("x8", CultureInfo.InvariantCulture);
            text.Append(body).Append(sum).Append('\n');
        }

        File.WriteAllText(path, text.ToString());
    }
}
