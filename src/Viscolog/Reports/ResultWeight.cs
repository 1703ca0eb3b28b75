namespace Viscolog.Reports;

/// <summary>How a result looks; its words say the same.</summary>
internal enum ResultWeight
{
    Plain,
    Good,
    Bad,
}
