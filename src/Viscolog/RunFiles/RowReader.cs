using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.RunFiles;

/// <summary>Reads rows one after the other and keeps the pot that they make.</summary>
internal sealed class RowReader(Run run)
{
    private static readonly Column[] Amounts = [Columns.AddedGrams, Columns.AddedPercent, Columns.AddedMilliliters];

    private readonly RowAppender _run = new(run);

    /// <summary>The row's content; null where the file is refused.</summary>
    public RowContent? Read(RowCells cells)
    {
        var content = new RowContent
        {
            Time = Time(cells),
            Void = cells.Text(Columns.Void),
            Taken = Amount(cells, Columns.Taken),
            LetDown = Amount(cells, Columns.LetDown),
            Water = Amount(cells, Columns.Water),
            Note = cells.Text(Columns.Note),
            Replaces = Replaces(cells),
        };
        content = content with { Dosed = Dosed(cells, content), Reading = ReadingCells.Of(cells, run.MethodInForce) };
        if (!cells.Findings.Well)
        {
            return null;
        }

        if (_run.Append(content) is { } fault)
        {
            cells.Findings.Refuse(fault.Column is { } column ? cells.At(column) : new(cells.Line, null, RowAppender.NothingRead), fault.Expected);
            return null;
        }

        return content;
    }

    private static bool Replaces(RowCells cells)
    {
        if (cells.Text(Columns.Replaces) is not { } text)
        {
            return false;
        }

        if (!string.Equals(text.Trim(), Columns.RowAbove, StringComparison.OrdinalIgnoreCase))
        {
            cells.Findings.Refuse(cells.At(Columns.Replaces), RowAppender.ReplacesExpected);
        }

        return true;
    }

    private static Mass? Amount(RowCells cells, Column column)
        => cells.Number(column) is { } grams and > 0 ? Mass.FromGrams(grams) : null;

    private static DateTimeOffset? Time(RowCells cells)
    {
        if (cells.Text(Columns.Time) is not { } text)
        {
            return null;
        }

        if (FileTime.TryParse(text.Trim(), out var time))
        {
            return time;
        }

        cells.Findings.Refuse(cells.At(Columns.Time), "a date and time with offset (ISO 8601) such as 2026-03-02T09:15:00+01:00");
        return null;
    }

    private Entry.Dosed? Dosed(RowCells cells, RowContent content)
    {
        Column[] filled = [.. Amounts.Where(cells.Has)];
        if (filled.Length > 1)
        {
            cells.Findings.Refuse(cells.At(filled[1]), $"one amount: {filled[0].Name} holds one already");
            return null;
        }

        var column = filled is [var only] ? only : Columns.AddedGrams;
        var amount = cells.Number(column) ?? 0;
        if (Thickener(cells, column, amount) is not { } thickener || amount == 0)
        {
            return null;
        }

        var grams = column == Columns.AddedPercent ? Poured(thickener, amount, BaseThen(content))
            : column == Columns.AddedMilliliters ? Weight(cells, thickener, amount) : amount;
        return grams == 0 ? null : new(thickener.Name, Mass.FromGrams(grams));
    }

    // What is cut with water has another density than the thickener.
    private static double Weight(RowCells cells, Thickener thickener, double milliliters)
    {
        if (thickener is { Density: { } density, Dilution.WaterParts: 0 })
        {
            return (double)((decimal)milliliters * (decimal)density.GramsPerMilliliter);
        }

        cells.Findings.Refuse(cells.At(Columns.AddedMilliliters), thickener.Density is null
            ? $"density_g_ml in the header line of '{thickener.Name}': milliliters need it; or grams in added_g"
            : $"grams in added_g: '{thickener.Name}' is cut with water, and its density is that of the thickener as supplied");
        return 0;
    }

    private Thickener? Thickener(RowCells cells, Column column, double amount)
    {
        var name = cells.Text(Columns.Thickener)?.Trim();
        var found = name is null ? (run.Thickeners is [var only] ? only : null) : run.FindThickener(name);
        if (found is null && (name is not null || amount > 0))
        {
            var at = cells.At(Columns.Thickener);
            cells.Findings.Refuse(name is null ? at with { Read = $"nothing beside {column.Name} {cells.At(column).Read}" } : at, RowAppender.ThickenerExpected(run));
        }

        return found;
    }

    private double BaseThen(RowContent content)
        => _run.Pot.Base.Grams * Kept(content) + (content.Void is null ? content.LetDown?.Grams ?? 0 : 0);

    // A sample takes base out too. Whether it is larger than the pot is told later.
    private double Kept(RowContent content)
        => content is { Void: null, Taken: { } sample } ? Math.Max(0, 1 - (sample.Grams / _run.Pot.Total.Grams)) : 1;

    // Decimal arithmetic, so that 0.7 % of 120 g is 0.84 g and not a neighbour of it.
    private static double Poured(Thickener thickener, double percent, double @base)
    {
        var (part, water) = ((decimal)thickener.Dilution.ThickenerParts, (decimal)thickener.Dilution.WaterParts);
        return (double)((decimal)percent * (decimal)@base / 100 * (part + water) / part);
    }
}
