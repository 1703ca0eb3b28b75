using System.CommandLine;
using System.Globalization;
using Viscolog.Core.Batches;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli.Calls;

/// <summary>An option that takes a number with a decimal point, strictly: a comma or a unit is refused rather than misread.</summary>
internal static class NumberOption
{
    private const NumberStyles Styles = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    public static Option<double?> Create(string name, string unit, string description, double above, double below) => new(name)
    {
        HelpName = unit,
        Description = description,
        CustomParser = result => Parse(name, result.Tokens[0].Value, above, below, result.AddError),
    };

    public static Option<double[]> CreateRepeatable(string name, string unit, string description, double above, double below) => new(name)
    {
        HelpName = unit,
        Description = description,
        Arity = ArgumentArity.OneOrMore,
        CustomParser = result => [.. result.Tokens.Select(t => Parse(name, t.Value, above, below, result.AddError)).OfType<double>()],
    };

    /// <summary>A number as strictly as an option takes it; null where the text is none.</summary>
    public static double? Read(string? text)
        => double.TryParse(text, Styles, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    private static double? Parse(string name, string text, double above, double below, Action<string> addError)
    {
        if (double.TryParse(text, Styles, CultureInfo.InvariantCulture, out var value) && value >= above && value < below)
        {
            return value;
        }

        addError(string.Create(CultureInfo.InvariantCulture, $"{name}: read '{text}', expected a number from {above} to below {below} "
            + $"with a decimal point and no unit"));
        return null;
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
    private const double Least = 1;
    private const double Most = 1e9;

    public static Option<BatchSize> Create(string name, string description) => new(name)
    {
        HelpName = "SIZE",
        Description = description,
        Required = true,
        CustomParser = result =>
        {
            if (Read(result.Tokens[0].Value) is { } size)
            {
                return size;
            }

            result.AddError($"{name}: read '{result.Tokens[0].Value}', expected a size with its unit, such as \"5 kg\", \"750 g\", \"10 "
                + $"L\" or \"500 mL\": 1 g or mL at least, with a decimal point");
            return null;
        },
    };

    /// <summary>A size as typed; null where it is none.</summary>
    public static BatchSize? Read(string text)
    {
        var mark = text.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or ' ').Count();
        if (mark <= 0 || NumberOption.Read(text[..mark].Trim()) is not { } number
            || Unit.Find(text[mark..].Trim()) is not { } unit || number is <= 0 or > Most)
        {
            return null;
        }

        var kept = (double)unit.ToKept((decimal)number);
        return (unit.Kind, kept) switch
        {
            (_, < Least or > Most) => null,
            (UnitKind.Mass, _) => new BatchSize.OfMass(Mass.FromGrams(kept)),
            (UnitKind.Volume, _) => new BatchSize.OfVolume(Volume.FromMilliliters(kept)),
            _ => null,
        };
    }
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
