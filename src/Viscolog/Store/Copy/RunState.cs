using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store.Copy;

/// <summary>A run while its records are applied: its document, and its pot, which gives the doses of each row.</summary>
internal sealed class RunState
{
    private readonly Run _run;
    private Pot _pot;
    private Dictionary<string, double> _doses;

    // What rows have changed in the document since it was made: a run may have a million of them, and the document is large.
    private RunDoc _doc;
    private (int Rows, int Voided, int Readings, string? Last) _since;

    private RunState(RunDoc doc, Run run)
    {
        (_doc, _run, _pot) = (doc, run, Pot.With(run.BaseMass));
        _doses = Doses();
    }

    /// <summary>The run's document as it stands.</summary>
    public RunDoc Doc
    {
        get
        {
            if (_since.Rows > 0)
            {
                _doc = _doc with
                {
                    Rows = _doc.Rows + _since.Rows,
                    Voided = _doc.Voided + _since.Voided,
                    Readings = _doc.Readings + _since.Readings,
                    Last = _since.Last!,
                };
                _since = default;
            }

            return _doc;
        }
        private set => _doc = value;
    }

    /// <summary>Whether something before the last row changed, so that the doses must be computed again.</summary>
    public bool IsReordered { get; private set; }

    /// <summary>A run that is in the copy.</summary>
    public static RunState Of(RunDoc doc, IEnumerable<RowDoc> rows)
    {
        var state = new RunState(doc, HeaderText.Read(doc.Header).Run);
        foreach (var row in rows)
        {
            state.Take(row);
        }

        return state;
    }

    /// <summary>A run whose header was stated, for the first time or anew.</summary>
    public static RunState Stated(LogRecord.RunStated stated, RunState? before, string at)
    {
        var file = HeaderText.Read(stated.Header);
        var run = file.Run;
        var doc = (before?.Doc ?? new RunDoc { Id = stated.Run, Uuid = stated.Id.ToString() }) with
        {
            Key = RunDoc.KeyOf(RunIdentity.Key(file)),
            Name = run.Name,
            Base = run.Base.Name,
            Thickeners = [.. run.Thickeners.Select(t => t.Name)],
            Pairs = [.. run.Thickeners.Select(t => RunDoc.PairOf(run.Base.Name, t.Name))],
            Header = stated.Header,
            Earlier = before is null ? [] : [.. before.Doc.Earlier, string.Join('\n', before.Doc.Header)],
            Columns = stated.Columns ?? [],
            Last = at,
        };
        return new(doc, run) { IsReordered = before is not null };
    }

    /// <summary>Adds a row.</summary>
    public RowDoc Add(LogRecord.RowAdded added, string at)
    {
        var before = _doc.Rows + _since.Rows;
        if (added.Row != before + 1 || added.After > before || added.After < 0)
        {
            throw new MisfitException(FormattableString.Invariant($"row {added.Row} of run {_doc.Id} follows {before} rows"));
        }

        if (added.Is.Dosed is { Thickener: var name } && _run.FindThickener(name) is null)
        {
            throw new FormatException(
                FormattableString.Invariant($"row {added.Row} of run {_doc.Id} names a thickener that its header lacks: {name}"));
        }

        if (added.Is.Reading?.Value is { } value && !_run.MethodInForce.Reads(value))
        {
            throw new FormatException(
                FormattableString.Invariant($"row {added.Row} of run {_doc.Id} is read by another method than its header says"));
        }

        var row = new RowDoc { Id = RowDoc.IdOf(_doc.Id, added.Row), After = added.After, Is = added.Is, Json = added.Json };
        IsReordered |= added.After is not null;
        _since = (
            _since.Rows + 1,
            _since.Voided + (added.Is.Void is null ? 0 : 1),
            _since.Readings + (CountsAsReading(row) ? 1 : 0),
            added.Is.Time is { } time ? FileTime.Show(time) : at);
        if (added.Is is { Void: null } and not { Dosed: null, LetDown: null, Water: null })
        {
            // A new step: it has not been stirred yet.
            _doc = _doc with { StirBegan = null, StirEnded = null };
        }

        return IsReordered ? row : Take(row);
    }

    /// <summary>Makes a row void.</summary>
    public RowDoc Void(RowDoc row, string reason, string at)
    {
        if (row.Row().Void is not null)
        {
            throw new MisfitException(FormattableString.Invariant($"row {row.Number()} of run {Doc.Id} is voided twice"));
        }

        IsReordered = true;
        Doc = Doc with { Voided = Doc.Voided + 1, Readings = Doc.Readings - (CountsAsReading(row) ? 1 : 0), Last = at };
        return row with { Voided = reason };
    }

    /// <summary>Makes a void row count again.</summary>
    public RowDoc Lift(RowDoc row, string at)
    {
        if (row.Row().Void is not { } reason)
        {
            throw new MisfitException(
                FormattableString.Invariant($"row {row.Number()} of run {Doc.Id} is not void, so nothing can be lifted"));
        }

        var lifted = row with { Voided = null, Lifted = [.. row.Lifted ?? [], reason] };
        IsReordered = true;
        Doc = Doc with { Voided = Doc.Voided - 1, Readings = Doc.Readings + (CountsAsReading(lifted) ? 1 : 0), Last = at };
        return lifted;
    }

    /// <summary>Sets the clock of the last step.</summary>
    public void Set(LogRecord.ClockSet clock, string at)
    {
        foreach (var text in new[] { clock.Began, clock.Ended }.OfType<string>())
        {
            if (!FileTime.TryParse(text, out _))
            {
                throw new FormatException(
                    FormattableString.Invariant($"the clock of run {Doc.Id} is set to {OneLine.Quoted(text)}, which is no time"));
            }
        }

        Doc = Doc with { StirBegan = clock.Began, StirEnded = clock.Ended, Last = at };
    }

    /// <summary>Puts the run away, or brings it back.</summary>
    public void Archive(bool isArchived, string at) => Doc = Doc with { Archived = isArchived ? at : null };

    /// <summary>Hands the run to another log, or takes it back.</summary>
    public void Hand(Guid? to, string at) => Doc = Doc with { Handed = to?.ToString(), Last = at };

    /// <summary>The rows whose doses have changed, with the new doses.</summary>
    public IReadOnlyList<RowDoc> Redosed(IEnumerable<RowDoc> rows)
    {
        _pot = Pot.With(_run.BaseMass);
        _doses = Doses();
        return
        [
            .. rows.Select(r => (r.DosesPct, Now: Take(r))).Where(r => r.DosesPct?.SequenceEqual(r.Now.DosesPct!) == false)
                .Select(r => r.Now),
        ];
    }

    private static bool CountsAsReading(RowDoc row)
        => row.Row() is { Void: null, Reading: not null };

    private RowDoc Take(RowDoc row)
    {
        var before = _pot;
        _pot = row.Row().Entries().Aggregate(_pot, _run.After);
        _doses = ReferenceEquals(_pot, before) ? _doses : Doses();
        return row with { DosesPct = _doses };
    }

    private Dictionary<string, double> Doses()
        => _run.Thickeners.ToDictionary(t => t.Name, t => _pot.DoseOf(t.Name).Percent, StringComparer.Ordinal);
}
