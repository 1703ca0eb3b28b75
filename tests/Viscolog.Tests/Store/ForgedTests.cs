using System.Text;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>Records that nobody logged under checksums that hold: refused with the line named, or left out with the line named.</summary>
public sealed class ForgedTests
{
    private static readonly string[] Values =
    [
        "-1",
        "0",
        "1",
        "7",
        "2147483647",
        "99999999999",
        "1e999",
        "null",
        "\"\"",
        "\"x\"",
        "[]",
        "[null]",
        "{}",
        "true",
        "\"\\u0000\"",
    ];

    [Fact]
    public void A_forged_record_is_named_or_says_what_could_have_been_logged()
    {
        using var bench = Bench.Filled();
        using (var log = bench.Open())
        {
            Assert.IsType<WriteOutcome.Saved>(log.Void(1, 2, "spilt"));
            Assert.IsType<WriteOutcome.Saved>(log.Replace(1, 3, "typed wrong", Bench.Row(700)));
            Assert.IsType<WriteOutcome.Saved>(log.Restate(1, log.Run(1)!.File));
        }

        Assert.Equal(
            0,
            Called.In(
                bench.Place.Folder,
                "import",
                Checkout.Sample("materials/workshop.csv"),
                Checkout.Sample("oils/workshop-oils.csv")).Code);
        var before = new Snapshot(bench.Place);
        string[] records =
        [
            .. Encoding.UTF8.GetString(before.Bytes(bench.Place.Journal)).TrimEnd().Split('\n')
                .Select(l => l[(l.IndexOf(' ', StringComparison.Ordinal) + 1)..l.LastIndexOf(' ')]),
        ];
        var (random, opened, refused) = (new Random(61), 0, 0);
        for (var i = 0; i < Sweep.Tries(6000, 250); i++)
        {
            var forged = Chained(Forged(records, random));
            before.PutBack((bench.Place.Journal, forged), (bench.Place.Seal, null), (bench.Place.Mark, null));
            var called = Called.In(bench.Place.Folder, "runs", "--json");
            Assert.True(called.Code is 0 or 4, FormattableString.Invariant($"try {i}: exit {called.Code} {called.Error}"));
            Assert.True(Snapshot.IsUntouched(bench.Place.Journal, forged), FormattableString.Invariant($"try {i}"));
            if (called.Code == 4)
            {
                refused++;
                Assert.True(
                    called.Error.Contains("line", StringComparison.Ordinal)
                        || called.Error.Contains("newer version", StringComparison.Ordinal),
                    called.Error);
                continue;
            }

            opened++;
            string[][] calls = [["show", "1"], ["export", "--all", "-o", bench.Place.Folder + "-out", "--force"], ["drift"], ["verify"]];
            foreach (var args in calls)
            {
                var told = Called.In(bench.Place.Folder, args);
                Assert.True(told.Code is 0 or 2 or 4, FormattableString.Invariant($"try {i}, {args[0]}: exit {told.Code} {told.Error}"));
            }
        }

        Directory.Delete(bench.Place.Folder + "-out", recursive: true);
        Assert.True(opened > 0 && refused > 0);
    }

    private static List<string> Forged(string[] records, Random random)
    {
        List<string> forged = [.. records];
        var at = 1 + random.Next(forged.Count - 1);
        switch (random.Next(5))
        {
            case 0:
                forged.RemoveAt(at);
                break;
            case 1:
                forged.Insert(at, forged[1 + random.Next(forged.Count - 1)]);
                break;
            case 2:
                var other = 1 + random.Next(forged.Count - 1);
                (forged[at], forged[other]) = (forged[other], forged[at]);
                break;
            case 3:
                forged[at] = WithValue(forged[at], random);
                break;
            default:
                var text = forged[at].ToCharArray();
                text[random.Next(text.Length)] = (char)random.Next(' ', 127);
                forged[at] = new(text);
                break;
        }

        return forged;
    }

    /// <summary>The record with another value behind one of its colons.</summary>
    private static string WithValue(string record, Random random)
    {
        int[] colons = [.. record.Index().Where(c => c.Item == ':' && c.Index > 0 && record[c.Index - 1] == '"').Select(c => c.Index)];
        var start = colons[random.Next(colons.Length)] + 1;
        var end = record.AsSpan(start).IndexOfAny(",}]");
        return record[..start] + Values[random.Next(Values.Length)] + record[(end < 0 ? record.Length : start + end)..];
    }

    private static byte[] Chained(List<string> records)
    {
        var (journal, sum) = (new StringBuilder(), "");
        foreach (var (i, record) in records.Index())
        {
            var line = FormattableString.Invariant($"{i + 1} {record} ");
            sum = JournalLine.SumOf(Encoding.UTF8.GetBytes($"{(i == 0 ? "" : sum + "\n")}{line}00000000"));
            journal.Append(line).Append(sum).Append('\n');
        }

        return Encoding.UTF8.GetBytes(journal.ToString());
    }
}
