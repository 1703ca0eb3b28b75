namespace Viscolog.RunFiles;

/// <summary>Counts the rows whose stirring or standing time belongs to no reading.</summary>
internal sealed class LooseTimes
{
    private int _first;
    private int _more;

    /// <summary>Looks at one row.</summary>
    public void Note(RowCells cells, RowContent content)
    {
        if (content.Reading is not null || !(cells.Number(Columns.Stir) > 0 || cells.Number(Columns.Wait) > 0))
        {
            return;
        }

        _more += _first == 0 ? 0 : 1;
        _first = _first == 0 ? cells.Line : _first;
    }

    /// <summary>Warns once for all of them.</summary>
    public void Warn(Findings findings)
    {
        if (_first > 0)
        {
            var more = _more == 0 ? "" : FormattableString.Invariant($" (and in {_more} more)");
            findings.Warn(_first, $"stir_s and wait_s of a row without a reading{more} are left out");
        }
    }
}
