using System.Collections.Immutable;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>
/// How two states of one run fit together. Either side may have gone on at its end, made rows void, and put a row in the place of one
/// that it made void; anything else is a contradiction. Both are gone through once, side by side, and neither is held in memory.
/// </summary>
internal sealed class RowMerge : IDisposable
{
    private readonly StreamedRun _known;
    private readonly Ahead<LoggedRow> _logged;
    private readonly Ahead<FileRow> _file;
    private readonly RowAppender _merged;
    private int _next;
    private int _before;

    private RowMerge(StreamedRun known, RunToImport file)
    {
        _known = known;
        Columns = known.Header.UnknownColumns.AddRange(file.Header.UnknownColumns.Where(c => PlaceIn(known.Header, c) < 0));
        int[] places = [.. Columns.Select(c => PlaceIn(file.Header, c))];
        _logged = new(
            known.Rows.Select(r => r with { Row = r.Row with { Unknown = [.. r.Row.Unknown.Select((t, i) => places[i] < 0 ? "" : t)] } }));
        _file = new(file.Rows.Select(r => r with { Unknown = [.. places.Select(p => r.Unknown.ElementAtOrDefault(p) ?? "")] }));
        Header = MergePlan.Stated(known.Number, known.Id, file.Header with { UnknownColumns = Columns });
        IsHeaderKnown = known.Headers.Contains(string.Join('\n', Header.Header), StringComparer.Ordinal);
        _merged = new((IsHeaderKnown ? known.Header : file.Header).Run);
        _next = known.Count;
        BeginAlike = _logged.IsAtEnd || _file.IsAtEnd || SameButVoid(_logged.Now.Row, _file.Now);
        Changes = new(known.Number);
    }

    /// <summary>The unknown columns of both: the log's, then those that only the file has.</summary>
    public ImmutableArray<string> Columns { get; }

    /// <summary>The file's header as a record of the log's run.</summary>
    public LogRecord.RunStated Header { get; }

    /// <summary>Whether that is one that the run has, or had: then the one that it has stays.</summary>
    public bool IsHeaderKnown { get; }

    /// <summary>Whether the first rows are the same; a side without rows contradicts nothing.</summary>
    public bool BeginAlike { get; }

    /// <summary>What the log lacks.</summary>
    public RowChanges Changes { get; }

    /// <summary>Rows that both have.</summary>
    public int Already { get; private set; }

    /// <summary>
    /// Where they say different things, each side's row with its place from 0, null where it has nothing more; null where they don't.
    /// </summary>
    public ((int Place, FileRow? Row) Logged, (int Place, FileRow? Row) File)? Contradiction { get; private set; }

    /// <summary>Why the rows of both together make no run under the header that it will have; null where they do.</summary>
    public string? Fault { get; private set; }

    /// <summary>Fits the rows of a file to the rows of the log; null where their first rows differ already.</summary>
    public static RowMerge? OfAlike(StreamedRun logged, RunToImport file)
    {
        using var merge = new RowMerge(logged, file);
        return merge.BeginAlike ? merge.Made() : null;
    }

    /// <summary>Fits the rows of a file to the rows of the log.</summary>
    public static RowMerge Of(StreamedRun logged, RunToImport file)
    {
        using var merge = new RowMerge(logged, file);
        return merge.Made();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _logged.Dispose();
        _file.Dispose();
    }

    private static int PlaceIn(RunFile file, string column)
        => file.UnknownColumns.IndexOf(column, 0, file.UnknownColumns.Length, StringComparer.OrdinalIgnoreCase);

    private RowMerge Made()
    {
        while (!_logged.IsAtEnd || !_file.IsAtEnd)
        {
            if (Next() is not var (there, here))
            {
                Contradiction = (
                    (_logged.Place, _logged.IsAtEnd ? null : _logged.Now.Row), (_file.Place, _file.IsAtEnd ? null : _file.Now));
                break;
            }

            Take(there ? _logged.Now : null, here ? _file.Now : null);
            if (there)
            {
                _logged.Move();
            }

            if (here)
            {
                _file.Move();
            }
        }

        return this;
    }

    private (bool Logged, bool File)? Next()
    {
        if (_logged.IsAtEnd || _file.IsAtEnd)
        {
            return (!_logged.IsAtEnd, !_file.IsAtEnd);
        }

        var (logged, file) = (_logged.Now, _file.Now);
        if (SameButVoid(logged.Row, file))
        {
            return logged.Row.Void is not { } there || file.Void is not { } here || there == here || logged.WasLifted(here)
                ? (true, true)
                : null;
        }

        // One side may have put a row in the place of a void one; then the other side's row comes up later.
        return _file.Before?.Void is not null && _file.Later().Any(r => SameButVoid(r, logged.Row)) ? (false, true)
            : _logged.Before?.Row.Void is not null && _logged.Later().Any(r => SameButVoid(r.Row, file)) ? (true, false)
            : null;
    }

    /// <summary>Takes the next row of both together: the log's, the file's, or one that both have.</summary>
    private void Take(LoggedRow? there, FileRow? here)
    {
        if (there is null)
        {
            _next++;
            Changes.Add(_next, here!, _logged.IsAtEnd ? null : _before);
            _before = _next;
            Append(here!);
            return;
        }

        _before = there.Number;
        Already += here is null ? 0 : 1;
        var isVoided = here?.Void is { } reason && !there.WasLifted(reason);
        if (isVoided && there.Row.Void is null)
        {
            Changes.Void(_before, here!.Void!);
        }

        Append(isVoided ? here! : there.Row);
    }

    private void Append(FileRow row) => Fault ??= _merged.Fault(row);

    private static bool SameButVoid(FileRow left, FileRow right)
        => Plain(left) == Plain(right) && Filled(left.Unknown).SequenceEqual(Filled(right.Unknown), StringComparer.Ordinal);

    private static FileRow Plain(FileRow row) => row with { Void = null, Replaces = false, Unknown = [] };

    // The last ones may be missing where they are empty.
    private static IEnumerable<string> Filled(ImmutableArray<string> unknown)
        => unknown.Take(1 + unknown.AsSpan().LastIndexOfAnyExcept(""));
}
