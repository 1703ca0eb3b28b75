using System.CommandLine;
using System.Globalization;
using Viscolog.Core.Batches;
using Viscolog.Tables;
using Viscolog.Typing;

namespace Viscolog.Cli.Calls;

/// <summary>
/// An option that takes a number as it may be typed on the screens: with a decimal point or comma, and a unit where it has one.
/// </summary>
internal static class NumberOption
{
    /// <param name="name">The option.</param>
    /// <param name="helpName">What stands for the number in the help.</param>
    /// <param name="description">What it is for.</param>
    /// <param name="range">What is allowed, in the unit that a number without one has.</param>
    public static Option<double?> Create(string name, string helpName, string description, NumberRange range) => new(name)
    {
        HelpName = helpName,
        Description = description,
        CustomParser = result => Parse(name, result.Tokens[0].Value, range, result.AddError),
    };

    /// <inheritdoc cref="Create"/>
    public static Option<double[]> CreateRepeatable(string name, string helpName, string description, NumberRange range) => new(name)
    {
        HelpName = helpName,
        Description = description,
        Arity = ArgumentArity.OneOrMore,
        CustomParser = result => [.. result.Tokens.Select(t => Parse(name, t.Value, range, result.AddError)).OfType<double>()],
    };

    private static double? Parse(string name, string text, NumberRange range, Action<string> addError)
    {
        var value = TypedNumber.Read(text, range, out var error);
        if (error is not null)
        {
            addError($"{name}: {error}");
        }

        return value;
    }
}

/// <summary>Options that take a day.</summary>
internal static class DayOption
{
    public static Option<DateOnly?> Create(string name, string description) => new(name)
    {
        HelpName = "DATE",
        Description = description,
        CustomParser = result =>
        {
            if (DateOnly.TryParseExact(
                result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                return day;
            }

            result.AddError($"{name}: read '{result.Tokens[0].Value}', expected a day such as 2026-03-02");
            return null;
        },
    };
}

/// <summary>An option that takes a mass or a volume with its unit, as "5 kg" or "750 mL".</summary>
internal static class SizeOption
{
    public static Option<BatchSize> Create(string name, string description) => new(name)
    {
        HelpName = "SIZE",
        Description = description,
        Required = true,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            string? error = null;
            // A bare number would be grams to one and kilograms to another.
            if (text.Any(char.IsLetter) && TypedSize.Read(text, out error) is { } size)
            {
                return size;
            }

            result.AddError($"{name}: {error ?? $"read '{text}', expected {TypedSize.Expected}"}");
            return null;
        },
    };
}

/// <summary>An option that takes a whole number from 1.</summary>
internal static class CountOption
{
    public static Option<int?> Create(string name, string description, int most) => new(name)
    {
        HelpName = "N",
        Description = description,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count >= 1 && count <= most)
            {
                return count;
            }

            result.AddError(FormattableString.Invariant($"{name}: read '{text}', expected a whole number from 1 to {most}"));
            return null;
        },
    };
}

/// <summary>An option that takes a text.</summary>
internal static class TextOption
{
    public static Option<string?> Create(string name, string helpName, string description) => new(name)
    {
        HelpName = helpName,
        Description = description,
    };
}

/// <summary>An option that is there or not.</summary>
internal static class FlagOption
{
    public static Option<bool> Create(string name, string description) => new(name) { Description = description };
}
