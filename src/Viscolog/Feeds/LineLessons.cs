using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Typing;

namespace Viscolog.Feeds;

/// <summary>Learns a pattern from lines and what they mean.</summary>
internal static class LineLessons
{
    private static readonly (string[] Units, Column Column)[] Meanings =
    [
        (["s", "sec"], ColumnOf(InstrumentScale.All.First(s => s.IsTime))),
        (["KU"], Columns.Values.First(v => v.Scale.Unit == "KU").Column),
        (["%"], Columns.Of(InstrumentScale.Torque)),
        (["rpm", "1/min"], Columns.Speed),
        (["mm"], Columns.StringLength),
        (["pH"], Columns.Ph),
    ];

    /// <summary>The pattern that says of each line what was said of it; null with the reason, or with what is still open.</summary>
    public static LinePattern? Learn(IReadOnlyList<LineExample> examples, out string? error)
    {
        error = examples.Count == 0 ? "no example" : null;
        var meanings = new List<ImmutableArray<(Column Column, double Value)>>();
        foreach (var example in examples)
        {
            if (Meaning(example.Meaning, out error) is not { } meaning)
            {
                return null;
            }

            meanings.Add(meaning);
        }

        if (error is not null)
        {
            return null;
        }

        if (meanings.Skip(1).Any(m => !m.Select(v => v.Column).ToHashSet().SetEquals(meanings[0].Select(v => v.Column))))
        {
            error = "say the same quantities of each line";
            return null;
        }

        string? open = null;
        foreach (var separator in Enum.GetValues<LineSeparator>())
        {
            foreach (var isComma in (ReadOnlySpan<bool>)[false, true])
            {
                if (Learn(new([]) { Separator = separator, IsDecimalComma = isComma }, examples, meanings, ref open) is { } pattern)
                {
                    return pattern;
                }
            }
        }

        error = open ?? "no field of the lines says what you said of them; look at the numbers and their units";
        return null;
    }

    /// <summary>The quantities that words say; null with the reason.</summary>
    public static ImmutableArray<(Column Column, double Value)>? Meaning(string words, out string? error)
    {
        var values = ImmutableArray.CreateBuilder<(Column, double)>();
        foreach (
            var part in words.Split([" at ", " and ", "; ", ", "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (Quantity(part) is not { } value)
            {
                error = $"read {OneLine.Quoted(part)}, expected a number with its unit, "
                    + "such as 8420 mPa·s, 23.1 °C, 12.5 g, 48 %, 20 rpm or pH 8.9";
                return null;
            }

            values.Add(value);
        }

        error = values.Count == 0 ? "say what the line means, such as 8420 mPa·s at 23.1 °C"
            : values.Select(v => v.Item1).Distinct().Count() < values.Count ? "say each quantity once" : null;
        return error is null ? values.ToImmutable() : null;
    }

    private static (Column Column, double Value)? Quantity(string text)
    {
        var part = text.StartsWith("pH", StringComparison.OrdinalIgnoreCase) ? text[2..].Trim() + " pH" : text;
        foreach (var (units, column) in Meanings)
        {
            if (
                Array.Find(units, u => part.EndsWith(u, StringComparison.OrdinalIgnoreCase)) is { } unit
                    && TypedNumber.Read(part[..^unit.Length], column.Range! with { Unit = "" }, out _) is { } value)
            {
                return (column, value);
            }
        }

        (Column Column, NumberRange Range)[] converted =
        [
            (Columns.Of(InstrumentScale.Viscosity), NumberRange.Viscosity),
            (Columns.Temperature, NumberRange.Temperature),
            (Columns.AddedGrams, NumberRange.Grams),
        ];
        foreach (var (column, range) in converted)
        {
            // A number without a unit would be taken for any of them.
            if (part.Any(char.IsLetter) && TypedNumber.Read(part, range, out _) is { } value)
            {
                return (column, value);
            }
        }

        return null;
    }

    private static LinePattern? Learn(
        LinePattern frame,
        IReadOnlyList<LineExample> examples,
        List<ImmutableArray<(Column Column, double Value)>> meanings,
        ref string? open)
    {
        var pattern = frame;
        var count = examples.Min(e => frame.Fields(e.Line.Trim()).Count());
        foreach (var (column, _) in meanings[0])
        {
            var fitting = new List<LinePiece>();
            for (var field = 1; field <= count; field++)
            {
                if (Fitting(frame, column, field, examples, meanings) is { } piece)
                {
                    fitting.Add(piece);
                }
            }

            if (fitting.Count != 1)
            {
                open ??= fitting.Count > 1
                    ? $"{column.Name}: fields {string.Join(" and ", fitting.Select(f => f.Place.Show()))} "
                        + "both fit; give one more line in which they differ"
                    : null;
                return null;
            }

            pattern = pattern with { Pieces = pattern.Pieces.Add(fitting[0]) };
        }

        return pattern;
    }

    /// <summary>The field as the column's, in a unit that makes every example right; null where there is none.</summary>
    private static LinePiece? Fitting(
        LinePattern frame,
        Column column,
        int field,
        IReadOnlyList<LineExample> examples,
        List<ImmutableArray<(Column Column, double Value)>> meanings)
    {
        List<LinePiece> places =
        [
            new(column, new LinePlace.Field(field, field + 1), null),
            new(column, new LinePlace.Field(field, null), null),
        ];
        places.AddRange(Unit.All.Select(u => new LinePiece(column, new LinePlace.Field(field, null), u.Symbol)));
        return places.Find(
            piece => examples.Zip(meanings).All(e => Says(piece, e.First.Line, e.Second.First(v => v.Column == column).Value)));

        bool Says(LinePiece piece, string line, double value)
            => (frame with { Pieces = [piece] }).Read(line) is LineOutcome.Understood read
                && read.Of(column) is { } held
                && Math.Abs(held - value) <= 1e-9 * Math.Max(1, Math.Abs(value))
                && (piece.Place is not LinePlace.Field { Unit: { } by } || Knows(frame.Fields(line.Trim()).ElementAtOrDefault(by - 1)));
    }

    private static bool Knows(string? unit)
        => unit is not null && (Unit.Find(unit) is not null || Meanings.Any(m => m.Units.Contains(unit, StringComparer.OrdinalIgnoreCase)));

    private static Column ColumnOf(InstrumentScale scale) => Columns.Of(scale);
}

/// <summary>A line of an instrument with what it means, as the person who stands before it reads it off.</summary>
/// <param name="Line">As it came.</param>
/// <param name="Meaning">In words with units, such as <c>8420 mPa·s at 23.1 °C</c>.</param>
internal sealed record LineExample(string Line, string Meaning);
