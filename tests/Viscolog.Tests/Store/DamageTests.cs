using System.Text;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>
/// Sectors and pages of a journal that are overwritten, bits that change together: named, never taken for an end that was not written.
/// </summary>
public sealed class DamageTests
{
    private const int Sector = 512;

    [Theory]
    [InlineData(Sector, true, "noise")]
    [InlineData(Sector, false, "zeros")]
    [InlineData(Sector, false, "ones")]
    [InlineData(Sector, false, "noise")]
    [InlineData(Sector, false, "elsewhere")]
    [InlineData(4096, true, "zeros")]
    [InlineData(4096, false, "zeros")]
    [InlineData(4096, false, "noise")]
    [InlineData(4096, false, "elsewhere")]
    public void An_overwritten_block_is_named_and_what_is_sound_is_salvaged(int block, bool isSealed, string filling)
    {
        using var bench = new Bench();
        var left = isSealed ? Closed(bench) : Unclosed(bench);
        var journal = left.Bytes(bench.Place.Journal);
        var (random, blocks) = (new Random(51), (journal.Length + block - 1) / block);
        var last = journal.AsSpan().LastIndexOf("{\"kind\":\"batch\""u8);
        for (var i = 0; i < blocks; i += Sweep.Tries(1, block == Sector ? 9 : 2))
        {
            var damaged = Overwritten(journal, i * block, Math.Min(block, journal.Length - (i * block)), filling, random);
            if (damaged.AsSpan().SequenceEqual(journal))
            {
                continue;
            }

            left.PutBack((bench.Place.Journal, damaged));
            var of = FormattableString.Invariant($"{filling}, block {i} of {blocks}");
            var reason = bench.Refusal(of);
            Assert.True(Snapshot.IsUntouched(bench.Place.Journal, damaged), $"{of}: {reason}");
            if (i == 0)
            {
                continue;
            }

            Assert.Contains("damaged: line ", reason, StringComparison.Ordinal);
            Assert.Contains("'viscolog verify --salvage NEWLOG'", reason, StringComparison.Ordinal);
            if (!isSealed && (i + 1) * block <= last)
            {
                // Without a word on how long the journal was, a later line whose checksum holds proves it.
                left.PutBack((bench.Place.Journal, damaged), (bench.Place.Mark, null));
                bench.Refusal(of + ", no mark");
            }

            // Nothing but what the block covers is missing, and nothing is there that was never logged.
            var (salvaged, lost) = Salvaged(bench, of);
            var most = 2 + damaged.AsSpan(i * block, Math.Min(block, journal.Length - (i * block))).Count((byte)'\n')
                + journal.AsSpan(i * block, Math.Min(block, journal.Length - (i * block))).Count((byte)'\n');
            Assert.True(lost <= most, $"{of}: {lost} rows of 120 are lost, at most {most} stood in the block");
            Assert.Empty(salvaged.Except(Enumerable.Range(1000, 120)));
        }
    }

    [Fact]
    public void Damage_across_a_batchs_last_row_and_its_end_loses_no_later_batch()
    {
        using var bench = new Bench();
        var left = Unclosed(bench);
        var journal = left.Bytes(bench.Place.Journal);
        var end = journal.AsSpan().IndexOf("{\"kind\":\"end\"}"u8);
        journal.AsSpan(end - 60, 80).Clear();
        left.PutBack((bench.Place.Journal, journal), (bench.Place.Mark, null));
        Assert.Contains("damaged: line 7 ", bench.Refusal(), StringComparison.Ordinal);
        var called = Called.In(bench.Place.Folder, "verify", "--salvage", bench.Place.Folder + "-new");
        Assert.Equal(0, called.Code);
        Assert.Contains("lines 7 to 9", called.Error + called.Output, StringComparison.Ordinal);
        Assert.Equal(0, Called.In(bench.Place.Folder + "-new", "verify").Code);
        Assert.Equal(4, Called.In(bench.Place.Folder, "verify", "--salvage", bench.Place.Folder + "-new").Code);
        Assert.True(Snapshot.IsUntouched(bench.Place.Journal, journal));
    }

    /// <summary>The end of a batch was written once all its rows stood on the disk, so a bad row before it was never cut short.</summary>
    [Fact]
    public void A_bad_row_before_the_end_of_the_last_batch_is_damage()
    {
        using var bench = new Bench();
        var left = Unclosed(bench);
        var journal = left.Bytes(bench.Place.Journal);
        var end = journal.AsSpan().LastIndexOf("{\"kind\":\"end\"}"u8);
        var row = journal.AsSpan(0, end).LastIndexOf((byte)'\n');
        // The row's checksum, on which that of the end is chained.
        journal.AsSpan(row - 12, 12).Fill((byte)'x');
        left.PutBack((bench.Place.Journal, journal), (bench.Place.Mark, null));
        Assert.Contains("damaged: line ", bench.Refusal(), StringComparison.Ordinal);
        Assert.True(Snapshot.IsUntouched(bench.Place.Journal, journal));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Bits_that_change_together_are_named_and_nothing_is_cut(bool isSealed)
    {
        using var bench = new Bench();
        var left = isSealed ? Closed(bench) : Unclosed(bench);
        var journal = left.Bytes(bench.Place.Journal);
        var random = new Random(52);
        for (var i = 0; i < Sweep.Tries(2000, 60); i++)
        {
            var (flipped, count) = ((byte[])[.. journal], 2 + random.Next(7));
            var near = random.Next(2) == 0;
            var at = random.Next(journal.Length);
            for (var k = 0; k < count; k++)
            {
                var place = near ? Math.Min(journal.Length - 1, at + random.Next(8)) : random.Next(journal.Length);
                flipped[place] ^= (byte)(1 << random.Next(8));
            }

            if (flipped.AsSpan().SequenceEqual(journal))
            {
                continue;
            }

            left.PutBack((bench.Place.Journal, flipped));
            bench.Refusal(FormattableString.Invariant($"try {i}: {count} bits, the first at {at}"));
            Assert.True(Snapshot.IsUntouched(bench.Place.Journal, flipped));
        }
    }

    [Fact]
    public void A_row_behind_a_lost_one_is_kept_in_sight_and_counts_no_more()
    {
        using var bench = Bench.Filled();
        using (var log = bench.Open())
        {
            Assert.IsType<WriteOutcome.Saved>(log.Add(1, Bench.Row(930)));
            Assert.IsType<WriteOutcome.Saved>(log.Void(1, 2, "spilt"));
            Assert.IsType<WriteOutcome.Saved>(log.Replace(1, 6, "typed wrong", Bench.Row(931)));
            log.Import(Bench.File("glaze 2", 2), CancellationToken.None);
        }

        var journal = File.ReadAllText(bench.Place.Journal);
        File.WriteAllText(bench.Place.Journal, journal.Replace(":920", ":929", StringComparison.Ordinal));
        bench.Refusal();
        using var found = new Bench(bench.Place.Folder + "-new");
        Assert.Equal(0, Called.In(bench.Place.Folder, "verify", "--salvage", found.Place.Folder).Code);
        using var back = found.Open(LogUse.Read);
        var rows = back.Run(1)!.File.Contents().ToList();
        Assert.Equal(
            [null, "spilt", null, null, "lost:", "after", "after"], rows.Select(r => r.Void?.Split(' ')[0]), StringComparer.Ordinal);
        Assert.Equal(2, back.Run(2)!.File.Rows.Length);
        // What is there can be exported and read again.
        Assert.Equal(7, FileText.Read(FileText.Write(back.Run(1)!.File)).Rows.Length);
    }

    [Fact]
    public void Torn_ends_are_kept_under_names_of_their_own()
    {
        using var bench = Bench.Filled();
        var outside = bench.Place.Folder + "-outside";
        File.WriteAllText(outside, "mine");
        File.CreateSymbolicLink(bench.Place.Torn, outside);
        foreach (var tear in (string[])["10 {\"kind\":\"row", "10 {\"kind\":\"v", "10 "])
        {
            File.AppendAllText(bench.Place.Journal, tear);
            bench.Open().Dispose();
        }

        Assert.Equal("mine", File.ReadAllText(outside));
        Assert.Equal(
            ["readings.torn-2 10 {\"kind\":\"row", "readings.torn-3 10 {\"kind\":\"v", "readings.torn-4 10 "],
            Directory.GetFiles(bench.Place.Folder, "readings.torn-*").Order(StringComparer.Ordinal)
                .Select(p => $"{Path.GetFileName(p)} {File.ReadAllText(p)}"),
            StringComparer.Ordinal);
    }

    /// <summary>A closed log with thirty imports of four rows each, as bytes.</summary>
    private static Snapshot Closed(Bench bench)
    {
        using (var log = bench.Open())
        {
            Fill(log);
        }

        return new(bench.Place);
    }

    /// <summary>The same as a kill would leave it.</summary>
    private static Snapshot Unclosed(Bench bench)
    {
        using var log = bench.Open();
        Fill(log);
        return new(bench.Place);
    }

    private static void Fill(BenchLog log)
    {
        for (var i = 0; i < 30; i++)
        {
            Assert.IsType<WriteOutcome.Saved>(log.Import(Pot(i), CancellationToken.None).Outcome);
        }
    }

    private static RunFile Pot(int i)
    {
        var text = new StringBuilder(FormattableString.Invariant($"# name: pot {i}\n# base_g: 120\nviscosity_mpas\n"));
        for (var k = 0; k < 4; k++)
        {
            text.Append(FormattableString.Invariant($"{1000 + (4 * i) + k}\n"));
        }

        return FileText.Read(text.ToString());
    }

    private static byte[] Overwritten(byte[] journal, int at, int length, string filling, Random random)
    {
        byte[] damaged = [.. journal];
        var block = damaged.AsSpan(at, length);
        switch (filling)
        {
            case "zeros":
                block.Clear();
                break;
            case "ones":
                block.Fill(0xff);
                break;
            case "noise":
                random.NextBytes(block);
                break;
            default:
                // A block of the same journal that was written to the wrong place.
                journal.AsSpan(random.Next(journal.Length - length + 1), length).CopyTo(block);
                break;
        }

        return damaged;
    }

    private static (HashSet<int> Values, int Lost) Salvaged(Bench bench, string of)
    {
        using var found = new Bench(bench.Place.Folder + "-new");
        var outcome = LogSalvage.Write(bench.Place, found.Place, DateTimeOffset.UnixEpoch, null);
        Assert.True(outcome.Made is not null, $"{of}: {outcome.Reason}");
        using var log = found.Open(LogUse.Read);
        Assert.Empty(log.Notes);
        var values = log.Runs().SelectMany(r => log.Run(r.Number)!.File.Contents()).Select(r => r.Reading?.Value)
            .OfType<Viscolog.Core.Measuring.InstrumentValue.Direct>().Select(v => (int)v.Viscosity.MilliPascalSeconds).ToList();
        Assert.Equal(values.Count, values.Distinct().Count());
        return ([.. values], 120 - values.Count);
    }
}
