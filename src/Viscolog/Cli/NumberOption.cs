using System.CommandLine;
using System.Globalization;

namespace Viscolog.Cli;

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
    public static double? Read(string? text) => double.TryParse(text, Styles, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    private static double? Parse(string name, string text, double above, double below, Action<string> addError)
    {
        if (double.TryParse(text, Styles, CultureInfo.InvariantCulture, out var value) && value >= above && value < below)
        {
            return value;
        }

        addError(string.Create(CultureInfo.InvariantCulture, $"{name}: read '{text}', expected a number from {above} to below {below} with a decimal point and no unit"));
        return null;
    }
}
