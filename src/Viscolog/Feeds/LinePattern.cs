using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Typing;

namespace Viscolog.Feeds;

/// <summary>
/// How the lines of an instrument are read: which field is which column of a run file, and what else stands in them. As text it is
/// <c>key=value</c> after semicolons, as the traits of a thickener are: <c>viscosity_mpas=2/3; temp_c=4; stable=1:S</c>.
/// </summary>
/// <param name="Pieces">The quantities; at least one.</param>
internal sealed partial record LinePattern(ImmutableArray<LinePiece> Pieces)
{
    /// <summary>A longer line is not read.</summary>
    public const int LongestLine = 500;

    private const string Form = "FIELD, FIELD UNIT, FIELD/UNITFIELD or FROM-TO (columns of a line), such as 2, 2 Pa.s, 2/3 or 5-12";

    /// <summary>The columns that a line can fill: what is read, what stands beside it, and the grams on a balance.</summary>
    public static FrozenDictionary<string, Column> Columns { get; } = RunFiles.Columns.Values.Select(v => v.Column)
        .Concat(
            [
                RunFiles.Columns.Speed,
                RunFiles.Columns.Temperature,
                RunFiles.Columns.Fahrenheit,
                RunFiles.Columns.Ph,
                RunFiles.Columns.StringLength,
                RunFiles.Columns.AddedGrams,
            ])
        .ToFrozenDictionary(c => c.Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>What parts the fields.</summary>
    public LineSeparator Separator { get; init; }

    /// <summary>Whether numbers have a decimal comma.</summary>
    public bool IsDecimalComma { get; init; }

    /// <summary>The text of a field that says the value has come to rest.</summary>
    public LineFlag? Stable { get; init; }

    /// <summary>The text of a field that says it has not.</summary>
    public LineFlag? Unstable { get; init; }

    /// <summary>Beginnings of lines that say nothing.</summary>
    public ImmutableArray<string> Skipped { get; init; } = [];

    /// <summary>The checksum at the end of each line.</summary>
    public LineChecksum Checksum { get; init; }

    /// <summary>What the instrument is asked with, for those that answer only then (a query of SCPI, for one); null for none.</summary>
    public string? Ask { get; init; }

    /// <summary>How often it is asked.</summary>
    public TimeSpan Every { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>The pattern that a text says; null with the reason.</summary>
    public static LinePattern? Read(string text, out string? error)
    {
        var (pattern, seen) = (new LinePattern([]), new HashSet<string>(StringComparer.OrdinalIgnoreCase));
        foreach (var part in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var mark = part.IndexOf('=', StringComparison.Ordinal);
            var (key, value) = mark < 0 ? (part, "") : (part[..mark].Trim(), part[(mark + 1)..].Trim());
            if (!seen.Add(key))
            {
                error = $"{key}: once in a pattern";
                return null;
            }

            if (pattern.With(key, value, out error) is not { } next)
            {
                return null;
            }

            pattern = next;
        }

        error = pattern.Pieces.IsEmpty ? "name what a field holds, such as viscosity_mpas=1" : null;
        return error is null ? pattern : null;
    }

    /// <summary>The text that reads back as this pattern.</summary>
    public string Show()
    {
        var parts = Pieces.Select(p => $"{p.Column.Name}={p.Place.Show()}{(p.Unit is { } unit ? " " + unit : "")}").ToList();
        if (Separator != LineSeparator.Any)
        {
            parts.Add($"separator={Names.Separators.Of(Separator)}");
        }

        if (IsDecimalComma)
        {
            parts.Add("decimal=comma");
        }

        parts.AddRange(Stable is { } s ? [$"stable={s.Show()}"] : []);
        parts.AddRange(Unstable is { } u ? [$"unstable={u.Show()}"] : []);
        parts.AddRange(Skipped.IsEmpty ? [] : [$"skip={string.Join(',', Skipped)}"]);
        parts.AddRange(Checksum == LineChecksum.None ? [] : [$"checksum={Names.Checksums.Of(Checksum)}"]);
        parts.AddRange(Ask is { } ask ? [$"ask={ask}", $"every={FileNumbers.Show(Every.TotalSeconds)}"] : []);
        return string.Join("; ", parts);
    }

    /// <summary>Reads a line; never throws, whatever came over the wire.</summary>
    public LineOutcome Read(string line)
    {
        // Start and end of text (STX, ETX), of transmission and an acknowledgement stand around the lines of many instruments.
        var text = Trimmed(line);
        if (text.Length == 0 || Skipped.Any(s => text.StartsWith(s, StringComparison.Ordinal)))
        {
            return new LineOutcome.Skipped();
        }

        if (text.Length > LongestLine || text.Any(c => char.IsControl(c) && c != '\t') || text.Contains('\ufffd', StringComparison.Ordinal))
        {
            return new LineOutcome.Misread("not a line of text");
        }

        if (!LineSums.Holds(Checksum, ref text))
        {
            return new LineOutcome.Misread("the checksum does not hold");
        }

        string[] fields = [.. Fields(text)];
        var values = ImmutableArray.CreateBuilder<(Column Column, double Value)>(Pieces.Length);
        foreach (var piece in Pieces)
        {
            if (Value(piece, text, fields, out var error) is not { } value)
            {
                return new LineOutcome.Misread($"{piece.Column.Name}: {error}");
            }

            values.Add((piece.Column, value));
        }

        bool? isStable = Unstable?.Stands(fields) == true ? false
            : Stable is { } flag ? flag.Stands(fields)
            : Unstable is not null ? true : null;
        return new LineOutcome.Understood(values.MoveToImmutable(), isStable);
    }

    /// <summary>A line that an instrument of this pattern would send; null where it has no place for one of the values.</summary>
    /// <param name="value">The value of a column, in the column's unit; null for what is not shown.</param>
    /// <param name="isStable">Whether they have come to rest.</param>
    public string? Write(Func<Column, double?> value, bool isStable)
    {
        if (Pieces.Any(p => p.Place is not LinePlace.Field || value(p.Column) is null || p.Column.Range!.Shift != 0))
        {
            return null;
        }

        var fields = new SortedDictionary<int, string>();
        foreach (var piece in Pieces)
        {
            var (place, range) = ((LinePlace.Field)piece.Place, piece.Column.Range!);
            var unit = piece.Unit is { } named ? Core.Quantities.Unit.Find(named) : null;
            var usual = Core.Quantities.Unit.Find(range.Unit);
            var number = (decimal)value(piece.Column)!.Value;
            var shown = unit is not null && usual is not null ? usual.To(unit, number, null) ?? number : number;
            fields[place.Number] = (
                IsDecimalComma
                    ? shown.ToString("0.####", CultureInfo.InvariantCulture).Replace('.', ',')
                    : shown.ToString("0.####", CultureInfo.InvariantCulture));
            if (place.Unit is { } by)
            {
                fields[by] = range.Unit.Split(' ')[0];
            }
        }

        foreach (var (flag, says) in new[] { (Stable, isStable), (Unstable, !isStable) })
        {
            if (flag is not null && (says || !fields.ContainsKey(flag.Field)))
            {
                fields[flag.Field] = says ? flag.Text : "--";
            }
        }

        var separator =
            Separator switch { LineSeparator.Comma => ",", LineSeparator.Semicolon => ";", LineSeparator.Tab => "\t", _ => " " };
        return LineSums.With(
            Checksum, string.Join(separator, Enumerable.Range(1, fields.Keys.Max()).Select(i => fields.GetValueOrDefault(i, "--"))));
    }

    /// <summary>The fields of a line, a sign that stands alone joined to its number.</summary>
    internal IEnumerable<string> Fields(string text)
    {
        string[] parts = Separator switch
        {
            LineSeparator.Comma => text.Split(',', StringSplitOptions.TrimEntries),
            LineSeparator.Semicolon => text.Split(';', StringSplitOptions.TrimEntries),
            LineSeparator.Tab => text.Split('\t', StringSplitOptions.TrimEntries),
            LineSeparator.Space => text.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries),
            _ => text.Split(IsDecimalComma ? [' ', '\t', ';'] : [' ', '\t', ';', ','], StringSplitOptions.RemoveEmptyEntries),
        };
        var sign = "";
        foreach (var part in parts)
        {
            if (part is "+" or "-")
            {
                sign = part;
                continue;
            }

            yield return sign + part;
            sign = "";
        }
    }

    private static string Trimmed(string line)
    {
        var (from, to) = (0, line.Length);
        while (from < to && Goes(line[from]))
        {
            from++;
        }

        while (to > from && Goes(line[to - 1]))
        {
            to--;
        }

        return line[from..to];

        // An escape sequence does not stand around a line: it is noise.
        static bool Goes(char c) => c is '\0' or '\u0002' or '\u0003' or '\u0004' or '\u0006' || char.IsWhiteSpace(c);
    }

    private double? Value(LinePiece piece, string text, string[] fields, out string? error)
    {
        if (piece.Place.Text(text, fields) is not { Length: > 0 } held)
        {
            error = "the line is too short";
            return null;
        }

        var match = Number().Match(held);
        var number = match.Groups["n"].Value.Replace(" ", "", StringComparison.Ordinal);
        if (!match.Success || number.Contains(IsDecimalComma ? '.' : ',', StringComparison.Ordinal))
        {
            error = $"read {OneLine.Quoted(held)}, expected a number";
            return null;
        }

        var attached = match.Groups["u"].Value.Trim();
        var beside = piece.Place.UnitText(fields);
        var unit = attached.Length > 0 ? attached : beside ?? piece.Unit ?? "";
        var range = piece.Column.Range!;
        return TypedNumber.Read($"{number.Replace(',', '.')} {Known(unit, range.Unit)}", range, out error);
    }

    /// <summary>The unit, empty where it is the column's own, however the instrument writes it.</summary>
    private static string Known(string unit, string usual) => (unit.ToUpperInvariant(), usual) switch
    {
        ("SEC" or "S", "s") or ("RPM" or "1/MIN" or "MIN-1", "1/min") or ("KU", "KU") or ("MM", "mm") => "",
        // "% of full scale" and "pH units" are a column's, "%" and "pH" the instrument's.
        _ => unit.Length > 0 && usual.StartsWith(unit + " ", StringComparison.OrdinalIgnoreCase) ? "" : unit,
    };

    private LinePattern? With(string key, string value, out string? error)
    {
        error = null;
        if (Columns.TryGetValue(key, out var column))
        {
            var match = Place().Match(value);
            if (!match.Success || LinePlace.Of(match) is not { } place)
            {
                error = $"{key}: read {OneLine.Quoted(value)}, expected {Form}";
                return null;
            }

            var unit = match.Groups["unit"].Value is { Length: > 0 } text ? text : null;
            return this with { Pieces = Pieces.Add(new(column, place, unit)) };
        }

        LinePattern? next = key.ToUpperInvariant() switch
        {
            "SEPARATOR" when Names.Separators.Find(value) is { } separator => this with { Separator = separator },
            "DECIMAL" when value is "comma" or "point" => this with { IsDecimalComma = value == "comma" },
            "STABLE" when LineFlag.Read(value) is { } flag => this with { Stable = flag },
            "UNSTABLE" when LineFlag.Read(value) is { } flag => this with { Unstable = flag },
            "SKIP" when value.Length > 0 => this with { Skipped = [.. value.Split(',', StringSplitOptions.RemoveEmptyEntries)] },
            "CHECKSUM" when Names.Checksums.Find(value) is { } sum => this with { Checksum = sum },
            "ASK" when value.Length is > 0 and < 100 && value.All(char.IsAscii) => this with { Ask = value },
            "EVERY" when TypedNumber.Read(value, new("s", 0.1, 3600), out _) is { } seconds
                => this with { Every = TimeSpan.FromSeconds(seconds) },
            _ => null,
        };
        error = next is not null ? null : key.ToUpperInvariant() switch
        {
            "SEPARATOR" => $"separator: one of {Names.Separators.List}",
            "DECIMAL" => "decimal: comma or point",
            "STABLE" or "UNSTABLE" => $"{key}: FIELD:TEXT, such as 1:ST",
            "SKIP" => "skip: beginnings of lines that say nothing, with commas between them",
            "CHECKSUM" => $"checksum: one of {Names.Checksums.List}",
            "ASK" => "ask: what to send, plain letters and signs, less than 100 of them",
            "EVERY" => "every: seconds, from 0.1 to 3600",
            _ => $"read {OneLine.Quoted(key)}, expected "
                + (Spelling.Meant(key, Columns.Keys) is { } meant
                    ? $"{meant}?"
                    : "a column such as viscosity_mpas, temp_c, ph or added_g, or separator, decimal, "
                        + "stable, unstable, skip, checksum, ask, every"),
        };
        return next;
    }

    [
        GeneratedRegex(
            @"^(?<n>[+-]? *[0-9]+([.,][0-9]*)?([eE][+-]?[0-9]+)?)(?<u> *[^0-9\s.,+-][^\s]*)?$",
            RegexOptions.ExplicitCapture,
            matchTimeoutMilliseconds: 1000),
    ]
    private static partial Regex Number();

    [
        GeneratedRegex(
            "^(?<at>[0-9]{1,3})(-(?<to>[0-9]{1,3})|/(?<by>[0-9]{1,3}))?( +(?<unit>[^ ].*))?$",
            RegexOptions.ExplicitCapture,
            matchTimeoutMilliseconds: 1000),
    ]
    private static partial Regex Place();

    /// <summary>How texts name the cases of sets.</summary>
    private static class Names
    {
        public static readonly FileNames<LineSeparator> Separators = new(Enum.GetValues<LineSeparator>());
        public static readonly FileNames<LineChecksum> Checksums = new(Enum.GetValues<LineChecksum>());
    }
}

/// <summary>A quantity in a line.</summary>
/// <param name="Column">The column of a run file that it fills.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Unit">Its unit where the line does not say it and it is not the column's; null for the column's.</param>
internal sealed record LinePiece(Column Column, LinePlace Place, string? Unit);

/// <summary>Where something stands in a line. The set of cases is closed.</summary>
internal abstract record LinePlace
{
    private LinePlace()
    {
    }

    /// <summary>What stands there; null where the line is too short.</summary>
    public abstract string? Text(string line, string[] fields);

    /// <summary>The unit that stands beside it; null where none is said.</summary>
    public virtual string? UnitText(string[] fields) => null;

    public abstract string Show();

    /// <summary>The place that was matched; null where it is none.</summary>
    public static LinePlace? Of(Match match)
    {
        var at = int.Parse(match.Groups["at"].ValueSpan, CultureInfo.InvariantCulture);
        int? to = match.Groups["to"].Success ? int.Parse(match.Groups["to"].ValueSpan, CultureInfo.InvariantCulture) : null;
        int? by = match.Groups["by"].Success ? int.Parse(match.Groups["by"].ValueSpan, CultureInfo.InvariantCulture) : null;
        return at < 1 || to < at || by < 1 ? null : to is { } last ? new Span(at, last) : new Field(at, by);
    }

    /// <summary>A field.</summary>
    /// <param name="Number">From 1.</param>
    /// <param name="Unit">The field that holds its unit; null for none.</param>
    internal sealed record Field(int Number, int? Unit) : LinePlace
    {
        public override string? Text(string line, string[] fields) => fields.ElementAtOrDefault(Number - 1);

        public override string? UnitText(string[] fields) => Unit is { } unit ? fields.ElementAtOrDefault(unit - 1) : null;

        public override string Show() => string.Create(CultureInfo.InvariantCulture, $"{Number}{(Unit is { } unit ? $"/{unit}" : "")}");
    }

    /// <summary>Columns of the line.</summary>
    /// <param name="From">From 1.</param>
    /// <param name="To">The last one; a line may end before.</param>
    internal sealed record Span(int From, int To) : LinePlace
    {
        public override string? Text(string line, string[] fields)
            => line.Length < From ? null : line[(From - 1)..Math.Min(To, line.Length)].Trim();

        public override string Show() => string.Create(CultureInfo.InvariantCulture, $"{From}-{To}");
    }
}

/// <summary>A field with a text that means something.</summary>
internal sealed record LineFlag(int Field, string Text)
{
    public static LineFlag? Read(string text)
        => text.Split(':', 2, StringSplitOptions.TrimEntries) is [var field, { Length: > 0 } held]
            && int.TryParse(field, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number is > 0 and < 1000
            ? new(number, held)
            : null;

    public bool Stands(string[] fields) => fields.ElementAtOrDefault(Field - 1) == Text;

    public string Show() => string.Create(CultureInfo.InvariantCulture, $"{Field}:{Text}");
}

/// <summary>What parts the fields of a line.</summary>
internal enum LineSeparator
{
    /// <summary>Blanks, tabs, semicolons and, where numbers have decimal points, commas.</summary>
    Any,
    Comma,
    Semicolon,
    Tab,
    Space,
}

/// <summary>What came of a line. The set of cases is closed.</summary>
internal abstract record LineOutcome
{
    private LineOutcome()
    {
    }

    /// <summary>It was understood.</summary>
    /// <param name="Values">The values, in their columns' units.</param>
    /// <param name="IsStable">Whether they have come to rest; null where the line does not say.</param>
    internal sealed record Understood(ImmutableArray<(Column Column, double Value)> Values, bool? IsStable) : LineOutcome
    {
        /// <summary>The value of a column; null where the line has none.</summary>
        public double? Of(Column column)
        {
            foreach (var (held, value) in Values)
            {
                if (held == column)
                {
                    return value;
                }
            }

            return null;
        }

        /// <summary>As words of a run file's row.</summary>
        public IEnumerable<string> Words => Values.Select(v => $"{v.Column.Name}={FileNumbers.Show(v.Value)}");
    }

    /// <summary>It says nothing: empty, or a line to be passed over.</summary>
    internal sealed record Skipped : LineOutcome;

    /// <summary>It was not understood; nothing of it is used.</summary>
    internal sealed record Misread(string Reason) : LineOutcome;
}
