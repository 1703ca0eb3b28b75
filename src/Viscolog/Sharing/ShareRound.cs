using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Viscolog.Store;
using Viscolog.Store.Journal;

namespace Viscolog.Sharing;

/// <summary>
/// Sends what the server lacks of this log, and fetches what this bench lacks of the others. Never touches the log itself.
/// </summary>
/// <param name="place">The log.</param>
/// <param name="log">Its identity.</param>
/// <param name="clock">The time.</param>
internal sealed class ShareRound(LogPlace place, Guid log, TimeProvider clock)
{
    private readonly OwnLines _own = new(place);
    private readonly Mirrors _mirrors = new(place);
    private readonly PracticeScores _scores = PracticeScores.Beside(place);
    private HashSet<Guid>? _sentGames;

    // What each mirror holds, so that it is looked through once.
    private readonly Dictionary<BenchStream, (long Lines, string Sum)> _held = [];

    /// <summary>The link as it is now; a round may begin another life of the log.</summary>
    public required ShareLink Link { get; set; }

    /// <summary>One round.</summary>
    /// <param name="server">The shared database.</param>
    /// <param name="acknowledged">Bytes of the journal that are known to be acknowledged.</param>
    /// <exception cref="Npgsql.NpgsqlException">
    /// The server is gone; what was sent and fetched stays so, the rest comes next time.
    /// </exception>
    /// <exception cref="ShareRefused">This bench is not the one that joined.</exception>
    /// <exception cref="IOException">What was fetched can't be kept.</exception>
    public ShareReport Go(ShareServer server, long acknowledged)
    {
        if (!server.Knows(log, Link.KeySum))
        {
            throw new ShareRefused($"another folder has joined as '{Link.Bench}' since; "
                + "only one can be that bench. If this is the right one, "
                + "'viscolog share leave' and 'viscolog share join … --again'");
        }

        var length = Math.Max(acknowledged, _own.Acknowledged());
        var (sent, lost) = Send(server, length);
        var (fetched, benches, faults) = Fetch(server);
        ShareGames(server);
        _mirrors.Write(new(clock.GetUtcNow(), benches) { Faults = faults });
        return new(sent, fetched, benches.DistinctBy(b => b.Stream.Log).Count(b => b.Stream.Log != log), lost, State(length), faults);
    }

    /// <summary>
    /// Sends the lines that are missing there; says how many were sent, and how many the server has that this log has lost.
    /// </summary>
    private (long Sent, long Lost) Send(ShareServer server, long length)
    {
        while (true)
        {
            var stream = new BenchStream(log, Link.Life);
            if (server.Last(stream) is not var (number, text))
            {
                if (server.LastLife(log) is var life && life > Link.Life)
                {
                    Begin(life + 1);
                    continue;
                }

                return (server.Send(stream, _own.From(1, length)), 0);
            }

            var same = _own.From(number, length).Select(l => l.Text).FirstOrDefault();
            if (same == text)
            {
                return (server.Send(stream, _own.From(number + 1, length)), 0);
            }

            if (same is null && _own.Last(length) is { Number: > 0 } last && server.Line(stream, last.Number) == last.Text)
            {
                return (0, number - last.Number);
            }

            // This log was put back and went on otherwise: from here on it is told from its beginning, as another life.
            Begin(Math.Max(server.LastLife(log), Link.Life) + 1);
        }

        void Begin(int life)
        {
            Link = Link with { Life = life };
            Link.Write(place);
        }
    }

    private void ShareGames(ShareServer server)
    {
        _sentGames ??= server.GamesOf(log);
        foreach (var (id, result) in _scores.Own(_sentGames))
        {
            server.Send(log, id, result);
            _sentGames.Add(id);
        }

        foreach (var (id, result) in server.Games(log, [.. _scores.Shared()]))
        {
            _scores.Keep(id, result);
        }
    }

    private (long Fetched, ImmutableArray<SharedBench> Benches, ImmutableArray<string> Faults) Fetch(ShareServer server)
    {
        var (fetched, faults) = (0L, ImmutableArray.CreateBuilder<string>());
        var benches = ImmutableArray.CreateBuilder<SharedBench>();
        foreach (var (bench, lines) in server.Benches())
        {
            // Earlier lives hold what a bench has lost since, this one as well.
            for (var life = bench.Stream.Log == log ? Link.Life - 1 : bench.Stream.Life; life > 0; life--)
            {
                var stream = bench.Stream with { Life = life };
                if (life < bench.Stream.Life && _held.ContainsKey(stream))
                {
                    benches.Add(bench with { Stream = stream });
                    continue;
                }

                if (!_held.TryGetValue(stream, out var held) || held.Lines != lines)
                {
                    fetched += Fetch(server, bench with { Stream = stream }, faults);
                }

                if (_held.TryGetValue(stream, out held) && held.Lines > 0)
                {
                    benches.Add(bench with { Stream = stream });
                }
            }
        }

        return (fetched, benches.ToImmutable(), faults.ToImmutable());
    }

    private long Fetch(ShareServer server, SharedBench bench, ImmutableArray<string>.Builder faults)
    {
        using var mirror = Mirror.Open(bench.Stream, _mirrors.Of(bench.Stream));
        var before = mirror.Lines;
        foreach (var (number, text) in server.Lines(bench.Stream, before))
        {
            if (mirror.Add(number, text) is { } fault)
            {
                faults.Add(FormattableString.Invariant(
                    $"line {number} of bench '{Text.TerminalText.Of(bench.Name)}' and what follows is left out: {fault}"));
                break;
            }
        }

        _held[bench.Stream] = (mirror.Lines, mirror.LastSum);
        return mirror.Lines - before;
    }

    /// <summary>One number for all that is shared: two benches that know the same have the same.</summary>
    private string State(long length)
    {
        var (number, text) = _own.Last(length);
        var all = _held.Select(h => (Stream: h.Key, h.Value.Lines, h.Value.Sum))
            .Append((Stream: new BenchStream(log, Link.Life), Lines: number, Sum: text[^JournalLine.SumLength..]))
            .OrderBy(s => s.Stream.Text, StringComparer.Ordinal)
            .Select(s => FormattableString.Invariant($"{s.Stream.Text} {s.Lines} {s.Sum}\n"))
            .Concat(_sentGames!.Concat(_scores.Shared()).Order().Select(g => $"{g}\n"));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(all))))[..16];
    }
}

/// <summary>What a round did.</summary>
/// <param name="Sent">Lines that were sent.</param>
/// <param name="Fetched">Lines of other benches that were fetched.</param>
/// <param name="Benches">Records of other benches that are known.</param>
/// <param name="Lost">Lines that the server has of this log and the log has not; nothing was sent then.</param>
/// <param name="State">Stands for all that this bench knows of itself and the others.</param>
/// <param name="Faults">What is wrong with records of others, a line each.</param>
internal sealed record ShareReport(long Sent, long Fetched, int Benches, long Lost, string State, ImmutableArray<string> Faults);
