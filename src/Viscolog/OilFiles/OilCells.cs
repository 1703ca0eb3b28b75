using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.OilFiles;

/// <summary>Reads one reading of a certified oil from its cells.</summary>
internal sealed class OilCells
{
    /// <summary>Expanded uncertainty of a certificate that states none, in % (k = 2; from memory).</summary>
    public const double UsualUncertainty = 1;

    private readonly ImmutableDictionary<string, string> cells;
    private readonly ValueReader values;
    private readonly Func<string?, Place> placeOf;
    private readonly Dictionary<string, double> numbers = new(StringComparer.OrdinalIgnoreCase);

    private OilCells(ImmutableDictionary<string, string> cells, ValueReader values, Func<string?, Place> placeOf)
    {
        (this.cells, this.values, this.placeOf) = (cells, values, placeOf);
        foreach (var (column, range) in OilColumns.Numbers)
        {
            if (cells.TryGetValue(column, out var text) && values.Number(placeOf(column), text, range) is { } number)
            {
                numbers[column] = number;
            }
        }
    }

    private Findings Findings => values.Findings;

    /// <summary>The reading of such cells; null where the file is refused.</summary>
    /// <param name="cells">The cells that hold something, by column; capitals make no difference.</param>
    /// <param name="values">Reads the values of this file.</param>
    /// <param name="placeOf">Where a column's cell stands; null for the row as a whole.</param>
    public static OilRow? Read(IEnumerable<KeyValuePair<string, string>> cells, ValueReader values, Func<string?, Place> placeOf)
    {
        var read = new OilCells(cells.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase), values, placeOf);
        return read.Findings.Well && read.Reading() is { } reading && values.Findings.Well
            ? new(reading, read.Kept()) { Void = read.cells.GetValueOrDefault(OilColumns.Void) }
            : null;
    }

    private OilReading? Reading()
    {
        var method = Method.Find(Text(OilColumns.Method));
        if (method is null || method.Scales.Contains(InstrumentScale.Plain))
        {
            Findings.Refuse(placeOf(OilColumns.Method), method is null ? HeaderKeys.MethodNames
                : "a method that a certified oil can check: direct, rotational, krebs or a cup");
            return null;
        }

        if (Needed(OilColumns.Oil) is not { } name || Number(OilColumns.Certified) is not { } certified
            || Number(OilColumns.CertifiedAt) is not { } certifiedAt
            || Number(OilColumns.At) is not { } at || Day() is not { } day || Shown(method) is not { } shown)
        {
            return null;
        }

        var factor = Optional(OilColumns.Factor) is { } each ? Viscosity.FromMilliPascalSeconds(each) : (Viscosity?)null;
        var setup = MethodSetup.None with { PerPercentTorque = factor };
        Density? density = Optional(OilColumns.Density) is { } d ? Density.FromGramsPerMilliliter(d) : null;
        switch (Conversions.ToBody(method, shown, setup, density))
        {
            case Conversion.Converted { Reading.Body: { } body }:
                var oil = new CertifiedOil(name, Viscosity.FromMilliPascalSeconds(certified), Temperature.FromCelsius(certifiedAt),
                    Percentage.FromPercent((Optional(OilColumns.Uncertainty) ?? UsualUncertainty) / 2))
                {
                    TemperatureCoefficient = Optional(OilColumns.Coefficient) is { } kelvin ? TemperatureCoefficient.Stated(kelvin) : null,
                };
                return new(ShearCondition.Of(method, shown), oil, body, Temperature.FromCelsius(at), day);
            case Conversion.Refused refused:
                Findings.Refuse(placeOf(null), MethodWords.Of(refused.Reason));
                return null;
            default:
                return null;
        }
    }

    private InstrumentValue? Shown(Method method)
    {
        var filled = Columns.Values.Where(v => cells.ContainsKey(v.Column.Name)).ToArray();
        if (filled is not [(var column, var scale)] || !method.Scales.Contains(scale))
        {
            var fitting = string.Join(" or ", Columns.Values.Where(v => method.Scales.Contains(v.Scale)
                && OilColumns.Numbers.ContainsKey(v.Column.Name)).Select(v => v.Column.Name));
            Findings.Refuse(
                placeOf(filled.Where(v => !method.Scales.Contains(v.Scale)).Select(v => v.Column.Name).FirstOrDefault()),
                $"one reading, of what the method {method.Id} shows: {fitting}");
            return null;
        }

        var speed = Optional(Columns.Speed.Name);
        if (scale.HasSpeed != speed is not null)
        {
            Findings.Refuse(placeOf(Columns.Speed.Name), "rpm with torque_pct, and only with it");
            return null;
        }

        return scale.Make(numbers[column.Name], speed ?? 0);
    }

    private DateOnly? Day()
    {
        if (DateOnly.TryParseExact(Text(OilColumns.Date), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        Findings.Refuse(placeOf(OilColumns.Date), "a day such as 2026-03-02");
        return null;
    }

    /// <summary>Numbers in their shortest form, so that rows which say the same are the same.</summary>
    private ImmutableSortedDictionary<string, string> Kept()
    {
        // A cell of control characters alone says nothing.
        var known = cells.Where(c => !c.Key.Equals(OilColumns.Void, StringComparison.OrdinalIgnoreCase)
            && OneLine.Of(c.Value).Trim().Length > 0);
        return known.ToImmutableSortedDictionary(
            c => OilColumns.All.FirstOrDefault(n => n.Equals(c.Key, StringComparison.OrdinalIgnoreCase)) ?? c.Key,
            c => numbers.TryGetValue(c.Key, out var number) ? FileNumbers.Show(number) : OneLine.Of(c.Value).Trim(),
            StringComparer.Ordinal);
    }

    private string Text(string column) => cells.GetValueOrDefault(column, "").Trim();

    private double? Optional(string column) => numbers.TryGetValue(column, out var value) ? value : null;

    private double? Number(string column) => Needed(column) is null ? null : numbers[column];

    private string? Needed(string column)
    {
        if (Text(column) is { Length: > 0 } text)
        {
            return text;
        }

        Findings.Refuse(placeOf(column), OilColumns.Numbers.TryGetValue(column, out var range)
            ? $"{range.Words(null)}, {FileNumbersAdvice}" : "the oil's name");
        return null;
    }

    private const string FileNumbersAdvice = "as the certificate or the thermometer says";
}

/// <summary>A certified oil read by a method, with the cells that say so.</summary>
/// <param name="Reading">What they say.</param>
/// <param name="Cells">The cells of its row in an oils file, by column, those of unknown columns too; without <c>void</c>.</param>
internal sealed record OilRow(OilReading Reading, ImmutableSortedDictionary<string, string> Cells)
{
    /// <summary>Why it counts no more; null while it counts.</summary>
    public string? Void { get; init; }

    /// <summary>The cells as one text: rows that say the same have the same.</summary>
    public string Key => string.Join('\u001f', Cells.Select(c => $"{c.Key}\u001e{c.Value}"));
}
