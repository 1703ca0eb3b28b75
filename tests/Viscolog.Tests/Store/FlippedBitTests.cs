using System.Text.RegularExpressions;
using Viscolog.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>One changed bit anywhere in a log's files is named, or changes no answer.</summary>
public sealed partial class FlippedBitTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void One_flipped_bit_in_the_journal_is_named_and_nothing_is_cut(bool isSealed)
    {
        using var bench = Bench.Filled();
        var before = new Snapshot(bench.Place);
        var journal = before.Bytes(bench.Place.Journal);
        var random = new Random(41);
        foreach (var at in Enumerable.Range(0, 300).Select(i => i < 120 ? journal.Length - 1 - i : random.Next(journal.Length)))
        {
            var flipped = before.Bytes(bench.Place.Journal);
            flipped[at] ^= (byte)(1 << random.Next(8));
            before.PutBack(
                (bench.Place.Journal, flipped), isSealed ? (bench.Place.Seal, before.Bytes(bench.Place.Seal)) : (bench.Place.Seal, null));
            var reason = bench.Refusal(FormattableString.Invariant($"byte {at} of {journal.Length}"));
            Assert.True(Snapshot.IsUntouched(bench.Place.Journal, flipped), FormattableString.Invariant($"byte {at}: {reason}"));
            if (Named().Match(reason) is { Success: true } named)
            {
                // The line itself, or the one after it where the flip hit what both share.
                var line = 1 + journal.AsSpan(0, at).Count((byte)'\n');
                Assert.InRange(
                    int.Parse(named.Groups["line"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), line, line + 1);
            }
            else
            {
                Assert.Contains(
                    "its first line",
                    reason.Replace("is not the journal of a log", "its first line", StringComparison.Ordinal),
                    StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void One_flipped_bit_in_the_query_copy_or_the_seal_changes_no_answer()
    {
        using var bench = Bench.Filled();
        var before = new Snapshot(bench.Place);
        string all;
        using (var log = bench.Open(LogUse.Read))
        {
            all = Snapshot.All(log);
        }

        var random = new Random(42);
        for (var i = 0; i < Sweep.Tries(150, 50); i++)
        {
            var path = i % 10 == 9 ? bench.Place.Seal : bench.Place.Copy;
            var flipped = before.Bytes(path);
            // The first page is full of meaning, so it is hit more often.
            var at = random.Next(i % 3 == 0 ? Math.Min(200, flipped.Length) : flipped.Length);
            flipped[at] ^= (byte)(1 << random.Next(8));
            before.PutBack((path, flipped));
            if (bench.Outcome().Is(out var log, out var reason))
            {
                using (log)
                {
                    Assert.Equal(all, Snapshot.All(log));
                    Assert.NotEmpty(log.Notes);
                }
            }
            else
            {
                Assert.StartsWith($"{bench.Place.Copy} ", reason, StringComparison.Ordinal);
                Assert.True(Snapshot.IsUntouched(path, flipped));
            }
        }
    }

    [GeneratedRegex(@"damaged: line (?<line>\d+) ", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Named();
}
