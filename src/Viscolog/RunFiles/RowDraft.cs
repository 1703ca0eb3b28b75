using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.RunFiles;

/// <summary>A row while its cells are read.</summary>
/// <param name="run">The run that it is read for; null where it is only put together again from what was stored.</param>
internal sealed class RowDraft(Run? run = null)
{
    public DateTimeOffset? Time { get; set; }

    public Mass? Taken { get; set; }

    public Mass? LetDown { get; set; }

    public Mass? Water { get; set; }

    public string? Thickener { get; set; }

    /// <summary>What was poured, and the column that says it.</summary>
    public (string Name, double Amount)? Added { get; set; }

    public TimeSpan? Stir { get; set; }

    public TimeSpan? Wait { get; set; }

    /// <summary>What the method showed, and the column that says it; a scale of times has the time.</summary>
    public (string Name, InstrumentScale Scale, double Shown, TimeSpan? Time)? Value { get; set; }

    public double? Speed { get; set; }

    public Temperature? Temperature { get; set; }

    public Acidity? Acidity { get; set; }

    public Length? StringLength { get; set; }

    public ObservedFault? Fault { get; set; }

    public string? Note { get; set; }

    public string? Void { get; set; }

    public bool Replaces { get; set; }

    /// <summary>Whether there is a stirring or standing time above 0; it belongs to a reading.</summary>
    public bool HasTimes => Stir > TimeSpan.Zero || Wait > TimeSpan.Zero;

    /// <summary>Why a value of a scale can't stand in the row; null where it can.</summary>
    public string? Against(InstrumentScale scale)
        => Value is { } other ? $"one value per row: {other.Name} already has one"
            : run is not null && !run.MethodInForce.Scales.Contains(scale) ? Columns.NotRead(run.MethodInForce) : null;

    /// <summary>The row of what was stored.</summary>
    public FileRow ToRow() => Row(Thickener is { } name && Added is { } added ? new(name, Mass.FromGrams(added.Amount)) : null);

    /// <summary>The row of a file; null with the cell that does not fit the others.</summary>
    /// <param name="pot">The pot before it.</param>
    /// <param name="fault">Which, and what ought to stand there.</param>
    public FileRow? ToRow(Pot pot, out CellFault? fault)
    {
        var dosed = Dosed(pot, out fault);
        var torque = Value is { Scale.HasSpeed: true } value ? value.Name : null;
        if (fault is null && torque is not null && Speed is null)
        {
            fault = new(Columns.Speed, $"the speed in 1/min: {torque} needs {Columns.Speed.Name} in the same row");
        }
        else if (fault is null && torque is null && Speed is not null)
        {
            fault = new(Columns.Speed, $"an empty cell: {Columns.Speed.Name} goes with "
                + $"{Columns.Values.First(v => v.Scale.HasSpeed).Column.Name}");
        }

        return fault is null ? Row(dosed) : null;
    }

    private FileRow Row(Entry.Dosed? dosed) => new()
    {
        Time = Time,
        Taken = Taken,
        LetDown = LetDown,
        Water = Water,
        Dosed = dosed,
        Reading = Reading() is { IsEmpty: false } reading ? reading : null,
        Note = Note,
        Void = Void,
        Replaces = Replaces,
    };

    private Reading Reading() => new()
    {
        Value = Value is not { } value || (value.Scale.HasSpeed && Speed is null) ? null
            : value.Time is { } time ? new InstrumentValue.CupTime(time) : value.Scale.Make(value.Shown, Speed ?? 0),
        Stir = Stir,
        Wait = Wait,
        Temperature = Temperature,
        Acidity = Acidity,
        StringLength = StringLength,
        Fault = Fault,
    };

    private Entry.Dosed? Dosed(Pot pot, out CellFault? fault)
    {
        fault = null;
        var (column, amount) = Added ?? (Columns.AddedGrams.Name, 0);
        var found = Thickener is null ? (run!.Thickeners is [var only] ? only : null) : run!.FindThickener(Thickener);
        if (found is null && (Thickener is not null || amount > 0))
        {
            fault = new(Columns.Thickener, RowAppender.ThickenerExpected(run)) { Beside = Thickener is null ? column : null };
        }

        if (found is null || amount == 0)
        {
            return null;
        }

        var grams = column == Columns.AddedPercent.Name ? Poured(found, amount, BaseThen(pot))
            : column == Columns.AddedMilliliters.Name ? Weight(found, amount, out fault) : amount;
        return grams == 0 ? null : new(Thickener ?? found.Name, Mass.FromGrams(grams));
    }

    // What is cut with water has another density than the thickener.
    private static double Weight(Thickener thickener, double milliliters, out CellFault? fault)
    {
        fault = null;
        if (thickener is { Density: { } density, Dilution.WaterParts: 0 })
        {
            return (double)((decimal)milliliters * (decimal)density.GramsPerMilliliter);
        }

        fault = new(Columns.AddedMilliliters, thickener.Density is null
            ? $"density_g_ml in the header line of '{thickener.Name}': milliliters need it; or grams in added_g"
            : $"grams in added_g: '{thickener.Name}' is diluted with water, and its density is that of the thickener as supplied");
        return 0;
    }

    private double BaseThen(Pot pot) => (pot.Base.Grams * Kept(pot)) + (Void is null ? LetDown?.Grams ?? 0 : 0);

    // A sample takes base out too. Whether it is larger than the pot is told later.
    private double Kept(Pot pot) => Void is null && Taken is { } sample ? Math.Max(0, 1 - (sample.Grams / pot.Total.Grams)) : 1;

    // Decimal arithmetic, so that 0.7 % of 120 g is 0.84 g and not a neighbour of it.
    private static double Poured(Thickener thickener, double percent, double @base)
    {
        var (part, water) = ((decimal)thickener.Dilution.ThickenerParts, (decimal)thickener.Dilution.WaterParts);
        return (double)((decimal)percent * (decimal)@base / 100 * (part + water) / part);
    }
}
