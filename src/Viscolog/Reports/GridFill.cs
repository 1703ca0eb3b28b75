namespace Viscolog.Reports;

/// <summary>What stands in a column.</summary>
internal enum GridFill
{
    /// <summary>Text, to the left.</summary>
    Words,

    /// <summary>Numbers, to the right.</summary>
    Numbers,

    /// <summary>Room to write by hand; a cell with text is not to be filled.</summary>
    Blank,
}
