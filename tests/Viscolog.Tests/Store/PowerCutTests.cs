using Viscolog.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>Files as a power cut may leave them: what was flushed, and any part of what was not.</summary>
public sealed class PowerCutTests
{
    /// <summary>A prime, so that a sample meets every kind of cut.</summary>
    private const int Stride = 17;

    [Fact]
    public void A_power_cut_while_rows_are_added_loses_nothing_that_was_acknowledged()
    {
        using var bench = new Bench();
        var marks = new List<int>();
        var copies = new List<byte[]>();
        using (var log = bench.Open())
        {
            log.Import(Bench.File("glaze 1", 2), CancellationToken.None);
            for (var i = 0; i < 4; i++)
            {
                marks.Add(File.ReadAllBytes(bench.Place.Journal).Length);
                copies.Add(Read(bench.Place.Copy));
                Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(900 + i)));
            }

            marks.Add(File.ReadAllBytes(bench.Place.Journal).Length);
        }

        var before = new Snapshot(bench.Place);
        var (journal, random) = (before.Bytes(bench.Place.Journal), new Random(43));
        foreach (var cut in Sweep.Places(marks[0], journal.Length, Stride, marks))
        {
            var acknowledged = marks.Count(m => m <= cut) - 1;
            var left = journal[..cut];
            if (cut % 2 == 1)
            {
                // The file had grown already, its last block was not filled.
                Array.Resize(ref left, marks.First(m => m >= cut));
            }

            // The mark is written once a row is on the disk; here it never was.
            before.PutBack(
                (bench.Place.Journal, left),
                (bench.Place.Seal, null),
                (bench.Place.Mark, null),
                (bench.Place.Copy, Torn(copies[random.Next(copies.Count)], before.Bytes(bench.Place.Copy), random)));
            using var log = bench.Open(LogUse.Read);
            var rows = log.Run(1)!.File.Rows.Length - 2;
            Assert.Equal(acknowledged, rows);
        }
    }

    [Fact]
    public void A_power_cut_during_an_import_leaves_the_whole_file_or_none_of_it()
    {
        using var bench = new Bench();
        bench.Open().Dispose();
        var start = File.ReadAllBytes(bench.Place.Journal).Length;
        using (var log = bench.Open())
        {
            log.Import(Bench.File("glaze 1", 6), CancellationToken.None);
        }

        var before = new Snapshot(bench.Place);
        var journal = before.Bytes(bench.Place.Journal);
        var end = journal.AsSpan().LastIndexOf("{\"kind\":\"end\"}"u8);
        var begun = start + journal.AsSpan(start).IndexOf((byte)'\n');
        var random = new Random(44);
        foreach (var cut in Sweep.Places(start, journal.Length, Stride, Boundaries(journal).Append(end)))
        {
            var left = journal[..cut];
            if (cut > begun && cut < end && cut % 3 == 0)
            {
                // Between the first flush and the second any block may be missing, or hold what was there before, those behind it present.
                left = journal[..end];
                left.AsSpan(cut, Math.Min(100, end - cut)).Fill(cut % 2 == 0 ? (byte)0 : (byte)'x');
            }

            before.PutBack(
                (bench.Place.Journal, left),
                (bench.Place.Seal, random.Next(2) == 0 ? null : "viscolog-seal 1\njournal 0"u8.ToArray()),
                (bench.Place.Copy, null));
            using var log = bench.Open(LogUse.Read);
            Assert.Equal(cut == journal.Length ? 1 : 0, log.Runs().Count);
        }
    }

    /// <summary>Where lines end.</summary>
    private static IEnumerable<int> Boundaries(byte[] journal) => journal.Index().Where(b => b.Item == '\n').Select(b => b.Index);

    /// <summary>A query copy as a power cut may leave it: pages old, new, or never filled.</summary>
    private static byte[]? Torn(byte[] old, byte[] now, Random random)
    {
        const int page = 8192;
        if (random.Next(6) == 0)
        {
            return null;
        }

        var torn = new byte[now.Length];
        for (var at = 0; at < torn.Length; at += page)
        {
            var source = random.Next(3) switch { 0 => old, 1 => now, _ => [] };
            if (source.Length >= at + page)
            {
                source.AsSpan(at, page).CopyTo(torn.AsSpan(at));
            }
        }

        return torn;
    }

    private static byte[] Read(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
