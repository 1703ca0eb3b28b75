namespace Viscolog.Reports;

/// <summary>A column of a table.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Fill">What stands in it.</param>
internal sealed record GridColumn(string Name, GridFill Fill = GridFill.Words);
