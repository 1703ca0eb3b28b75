using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.RunFiles;

/// <summary>Reads the reading of a row.</summary>
internal static class ReadingCells
{
    /// <summary>The reading; null where the row has none or the file is refused.</summary>
    public static Reading? Of(RowCells cells, Method method)
    {
        var reading = new Reading
        {
            Value = Value(cells, method),
            Stir = Span(cells.Number(Columns.Stir)),
            Wait = Span(cells.Number(Columns.Wait)),
            Temperature = Heat(cells),
            Acidity = cells.Number(Columns.Ph) is { } ph ? Acidity.FromPh(ph) : null,
            StringLength = cells.Number(Columns.StringLength) is { } mm ? Length.FromMillimeters(mm) : null,
            Fault = Fault(cells),
        };
        return reading is { Value: null, Temperature: null, Acidity: null, StringLength: null, Fault: null } ? null : reading;
    }

    private static Temperature? Heat(RowCells cells)
    {
        if (cells.Has(Columns.Temperature) && cells.Has(Columns.Fahrenheit))
        {
            cells.Findings.Refuse(cells.At(Columns.Fahrenheit), "one temperature a row: temp_c holds one already");
            return null;
        }

        // Exact arithmetic, so that 73.4 °F is 23 °C; the last digits of absolute zero may fall below it.
        return cells.Number(Columns.Fahrenheit) is { } f
            ? Temperature.FromCelsius(Math.Max(Columns.Temperature.Range!.Least, (double)Unit.Find("degF")!.ToKept((decimal)f)))
            : cells.Number(Columns.Temperature) is { } t ? Temperature.FromCelsius(t) : null;
    }

    private static ObservedFault? Fault(RowCells cells)
    {
        if (cells.Text(Columns.Fault) is not { } text)
        {
            return null;
        }

        var fault = FaultNames.Find(text);
        if (fault is null)
        {
            cells.Findings.Refuse(cells.At(Columns.Fault), $"one of {FaultNames.List}; anything else belongs in note");
        }

        return fault;
    }

    private static TimeSpan? Span(double? seconds) => seconds is { } s ? FileNumbers.Span(s) : null;

    private static InstrumentValue? Value(RowCells cells, Method method)
    {
        ValueColumn? filled = null;
        foreach (var candidate in ValueColumn.All)
        {
            if (filled is not null && cells.Has(candidate.Column))
            {
                cells.Findings.Refuse(cells.At(candidate.Column), $"one value a row: {filled.Column.Name} holds one already");
                return null;
            }

            filled = cells.Has(candidate.Column) ? candidate : filled;
        }

        if (filled is not null && !filled.Fits(method))
        {
            cells.Findings.Refuse(cells.At(filled.Column), ValueColumn.NotRead(method));
            return null;
        }

        var speed = Speed(cells, filled?.Column == Columns.TorquePercent);
        return filled is not null && cells.Number(filled.Column) is { } value && cells.Findings.Well ? filled.Make(value, speed ?? 0) : null;
    }

    private static double? Speed(RowCells cells, bool torque)
    {
        if (torque && !cells.Has(Columns.Speed))
        {
            cells.Findings.Refuse(cells.At(Columns.Speed), "the speed in 1/min: torque_pct needs rpm beside it");
        }
        else if (!torque && cells.Has(Columns.Speed))
        {
            cells.Findings.Refuse(cells.At(Columns.Speed), "an empty cell: rpm belongs beside torque_pct");
        }

        return cells.Number(Columns.Speed);
    }
}
