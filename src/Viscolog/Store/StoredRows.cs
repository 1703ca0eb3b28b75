using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>Rows to what is stored of them, and back. A round trip changes nothing.</summary>
internal static class StoredRows
{
    public static StoredRow Of(FileRow row)
    {
        var (content, reading) = (row.Content, row.Content.Reading);
        return new()
        {
            Time = content.Time is { } time ? FileTime.Show(time) : null,
            TakenG = content.Taken?.Grams,
            LetDownG = content.LetDown?.Grams,
            WaterG = content.Water?.Grams,
            Thickener = content.Dosed?.Thickener,
            AddedG = content.Dosed?.Poured.Grams,
            StirS = Seconds(reading?.Stir),
            WaitS = Seconds(reading?.Wait),
            ViscosityMpas = (reading?.Value as InstrumentValue.Direct)?.Viscosity.MilliPascalSeconds,
            CupS = Seconds((reading?.Value as InstrumentValue.CupTime)?.Time),
            Ku = (reading?.Value as InstrumentValue.Krebs)?.Units,
            TorquePct = (reading?.Value as InstrumentValue.Torque)?.OfFullScale.Percent,
            Rpm = (reading?.Value as InstrumentValue.Torque)?.RevolutionsPerMinute,
            Reading = (reading?.Value as InstrumentValue.Plain)?.Value,
            TempC = reading?.Temperature?.Celsius,
            Ph = reading?.Acidity?.Ph,
            StringMm = reading?.StringLength?.Millimeters,
            Fault = reading?.Fault is { } fault ? FaultNames.Of(fault) : null,
            Note = content.Note,
            Void = content.Void,
            Replaces = content.Replaces ? Columns.RowAbove : null,
            Unknown = row.Unknown.All(t => t.Length == 0) ? null : [.. row.Unknown],
        };
    }

    /// <summary>The row.</summary>
    /// <param name="row">What is stored.</param>
    /// <param name="voidReason">Why it counts no more, where that was logged later.</param>
    public static FileRow Read(StoredRow row, string? voidReason)
    {
        var reason = row.Void ?? voidReason;
        var content = new RowContent
        {
            Time = row.Time is { } text ? Time(text) : null,
            Taken = Grams(row.TakenG),
            LetDown = Grams(row.LetDownG),
            Water = Grams(row.WaterG),
            Dosed = row is { Thickener: { } name, AddedG: { } grams } ? new(name, Mass.FromGrams(grams)) : null,
            Reading = Reading(row),
            Note = row.Note,
            Replaces = row.Replaces is not null,
        };
        return new(content.Voided(reason), row.Unknown is null ? [] : ImmutableArray.Create(row.Unknown));
    }

    /// <summary>Whether something was measured.</summary>
    public static bool HoldsReading(StoredRow row) => row.TempC is not null || row.Ph is not null || row.StringMm is not null || row.Fault is not null || Value(row) is not null;

    private static Reading? Reading(StoredRow row)
    {
        if (!HoldsReading(row))
        {
            return null;
        }

        return new()
        {
            Value = Value(row),
            Stir = Span(row.StirS),
            Wait = Span(row.WaitS),
            Temperature = row.TempC is { } celsius ? Temperature.FromCelsius(celsius) : null,
            Acidity = row.Ph is { } ph ? Acidity.FromPh(ph) : null,
            StringLength = row.StringMm is { } mm ? Length.FromMillimeters(mm) : null,
            Fault = row.Fault is { } fault ? FaultNames.Find(fault) ?? throw new FormatException($"'{fault}' is no fault") : null,
        };
    }

    private static InstrumentValue? Value(StoredRow row) => row switch
    {
        { ViscosityMpas: { } mpas } => new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(mpas)),
        { CupS: { } seconds } => new InstrumentValue.CupTime(Span(seconds)!.Value),
        { Ku: { } units } => new InstrumentValue.Krebs(units),
        { TorquePct: { } torque, Rpm: { } rpm } => new InstrumentValue.Torque(Percentage.FromPercent(torque), rpm),
        { Reading: { } value } => new InstrumentValue.Plain(value),
        _ => null,
    };

    private static Mass? Grams(double? value) => value is { } grams ? Mass.FromGrams(grams) : null;

    // Decimals hold every tick of a span; a double would not.
    private static decimal? Seconds(TimeSpan? span) => span is { } s ? (decimal)s.Ticks / TimeSpan.TicksPerSecond : null;

    private static TimeSpan? Span(decimal? seconds) => seconds is { } s ? TimeSpan.FromTicks((long)(s * TimeSpan.TicksPerSecond)) : null;

    private static DateTimeOffset Time(string text)
        => FileTime.TryParse(text, out var time) ? time : throw new FormatException($"'{text}' is no time");
}
