using System.CommandLine;
using System.Globalization;

namespace Viscolog.Cli;

/// <summary>Options that take a day.</summary>
internal static class DayOption
{
    public static Option<DateOnly?> Create(string name, string description) => new(name)
    {
        HelpName = "DATE",
        Description = description,
        CustomParser = result =>
        {
            if (DateOnly.TryParseExact(result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                return day;
            }

            result.AddError($"{name}: read '{result.Tokens[0].Value}', expected a day such as 2026-03-02");
            return null;
        },
    };
}
