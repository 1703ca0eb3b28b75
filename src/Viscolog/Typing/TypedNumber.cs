using System.Text.RegularExpressions;
using Viscolog.Core.Quantities;
using Viscolog.Languages;
using Viscolog.Tables;

namespace Viscolog.Typing;

/// <summary>
/// Numbers as people type them, on the screens and in options: a decimal point or a decimal comma, thousands set apart by a space as the
/// program writes them, and a unit behind it where it is not the usual one.
/// </summary>
internal static partial class TypedNumber
{
    private static readonly FileNumbers Points = new(',');

    /// <summary>The number in the range's unit; null with the reason where it is none or out of range.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="range">What is allowed.</param>
    /// <param name="error">The reason.</param>
    /// <param name="density">Of what is counted, so that volumes can be told as masses; null where it is not known.</param>
    public static double? Read(string text, NumberRange range, out string? error, Density? density = null)
    {
        var typed = text.Trim();
        var number = Leading().Match(typed).Value;
        var unit = typed[number.Length..].Trim();
        var isUnit = unit.Length == 0 || char.IsLetter(unit[0]) || unit[0] is '°' or '%';
        if (
            !isUnit
                || number.Count(c => c is ',' or '.') > 1
                || !Points.TryParse(Together(number).Replace(',', '.'), range.Shift, out var value))
        {
            error = range.Allows(1450)
                ? Say($"read '{typed}', expected {RangeWords.Of(range, null)}, such as 1450 or 0.84")
                : Say($"read '{typed}', expected {RangeWords.Of(range, null)}");
            return null;
        }

        if (range.Unit == NumberRange.Viscosity.Unit && MayBeThousands(number))
        {
            // No viscosity is stated to a thousandth of a mPa·s: whoever types this means thousands, and 12 would be far off.
            var (decimals, whole) = (Marked(number, Numbers.NumberFormat.NumberDecimalSeparator), Marked(number, ""));
            error = number.Contains(',', StringComparison.Ordinal)
                ? Say($"read '{typed}', which may be {decimals} or {whole}; leave the comma out")
                : Say($"read '{typed}', which may be {decimals} or {whole}; leave the point out");
            return null;
        }

        if (unit.Length > 0 && unit != range.Unit)
        {
            if (InUsualUnit(value, unit, range, density, out error) is not { } converted)
            {
                return null;
            }

            value = converted;
        }

        error = range.Allows(value) ? null : Say($"read '{typed}', expected {RangeWords.Of(range, value)}");
        return error is null ? value : null;
    }

    /// <summary>Whether a comma may part thousands; where German is spoken a point may as well.</summary>
    private static bool MayBeThousands(string number)
        => Thousands().IsMatch(number) || (Spoken == Language.German && Thousands().IsMatch(number.Replace('.', ',')));

    private static string Marked(string number, string mark)
        => number.Replace(",", mark, StringComparison.Ordinal).Replace(".", mark, StringComparison.Ordinal);

    /// <summary>A number as a field is filled with it: it reads back as the same, whatever language it is changed in.</summary>
    public static string Filled(double value)
    {
        var point = FileNumbers.Show(value);
        var spoken = point.Replace(".", Numbers.NumberFormat.NumberDecimalSeparator, StringComparison.Ordinal);
        return Thousands().IsMatch(spoken) ? point : spoken;
    }

    /// <summary>
    /// What is typed into a field that is kept as a cell of a file, with decimal points for decimal commas; text, and a comma that may part
    /// thousands, stay as they are.
    /// </summary>
    public static string AsCell(string typed)
        => NumbersOnly().IsMatch(typed) && !typed.Split('-', ' ').Any(n => Thousands().IsMatch(n)) ? typed.Replace(',', '.') : typed;

    private static double? InUsualUnit(double value, string typed, NumberRange range, Density? density, out string? error)
    {
        var usual = Unit.Find(range.Unit);
        var given = usual is null ? null : Unit.Find(typed);
        if (usual is null || given is null || !Reaches(given, usual))
        {
            string[] units = [.. Unit.All.Where(u => usual is not null && Reaches(u, usual))
                .Select(u => u.Symbol).DefaultIfEmpty(range.Unit).Where(u => u.Length > 0)];
            error = units.Length > 0
                ? Say($"read the unit '{typed}', expected {string.Join(", ", units)}")
                : Say($"read the unit '{typed}', expected a number without a unit");
            return null;
        }

        // Decimals are exact, so that 1.45 Pa·s is 1450 mPa·s to the last digit.
        var result = Math.Abs(value) < 1e15 ? given.To(usual, (decimal)value, density) : null;
        error = result is null ? Say($"read the unit '{typed}'; without a density it can't be converted to {usual.Symbol}") : null;
        return (double?)result;
    }

    private static bool Reaches(Unit given, Unit usual) => given.To(usual, 1, Density.FromGramsPerMilliliter(1)) is not null;

    private static string Together(string number) => string.Concat(number.Where(c => !char.IsWhiteSpace(c)));

    [
        GeneratedRegex(
            @"^[-+]?([0-9]{1,3}([ \u00a0\u2009\u202f][0-9]{3})+(?![0-9])([.,][0-9]*)?|[0-9.,]*)([eE][-+]?[0-9]+)?",
            RegexOptions.ExplicitCapture,
            matchTimeoutMilliseconds: 1000),
    ]
    private static partial Regex Leading();

    /// <summary>One number or several, as a range is written.</summary>
    [GeneratedRegex("^[-+]?[0-9]+([.,][0-9]+)?( ?- ?[0-9]+([.,][0-9]+)?)?$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex NumbersOnly();

    /// <summary>A comma where some languages write thousands.</summary>
    [GeneratedRegex("^[1-9][0-9]{0,2},[0-9]{3}$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Thousands();
}
