using System.Text.RegularExpressions;
using CsvHelper;

namespace Viscolog.Tables;

/// <summary>Which decimal mark a file with tabs uses: spreadsheets write either.</summary>
internal static partial class DecimalMarks
{
    /// <summary>Whether it is the point. A comma counts as the mark only where it can't part thousands; else commas are refused.</summary>
    /// <param name="header">The header lines.</param>
    /// <param name="table">Reads the table.</param>
    public static bool IsPoint(IEnumerable<HeaderLine> header, Func<CsvReader> table)
    {
        if (header.Any(h => Comma().IsMatch(h.Value)))
        {
            return false;
        }

        using var reader = table();
        while (reader.Read())
        {
            for (var i = 0; i < reader.FieldCount; i++)
            {
                if (Comma().IsMatch(reader.GetString(i)))
                {
                    return false;
                }
            }
        }

        return true;
    }

    [
        GeneratedRegex(
            @"^\s*[+-]?(0+,\d+|\d*,(?!\d{3}([eE]|\s*$))\d+)([eE][+-]?\d+)?\s*$",
            RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
            1000),
    ]
    private static partial Regex Comma();
}
