using System.Text.RegularExpressions;

namespace Viscolog.Tables;

/// <summary>Turns texts of one file into values, or refuses the file.</summary>
internal sealed partial class ValueReader(Findings findings, FileNumbers numbers)
{
    /// <summary>What was found so far.</summary>
    public Findings Findings => findings;

    /// <summary>How the file writes numbers.</summary>
    public FileNumbers Numbers => numbers;

    /// <summary>
    /// The reader of numbers that stand in a text beside others. A spreadsheet that writes decimal commas leaves texts as they are, so such
    /// a text may have points, unless each of them can be a thousands separator.
    /// </summary>
    public ValueReader InText(string text)
        => numbers.IsComma && !text.Contains(',', StringComparison.Ordinal) && DecimalPoint().IsMatch(text)
            ? new(findings, new(','))
            : this;

    /// <summary>A number of the range; null where the file is refused.</summary>
    public double? Number(Place at, string text, NumberRange range)
    {
        var value = numbers.Read(text, range, out var expected);
        if (expected is not null)
        {
            findings.Refuse(at, expected);
        }

        return value;
    }

    /// <summary>Two numbers of the range in rising order, <c>low-high</c>; null where the file is refused.</summary>
    public (double Low, double High)? Rising(Place at, string text, NumberRange range)
    {
        if (InText(text).Split(text, '-') is { } pair && range.Allows(pair.First) && range.Allows(pair.Second) && pair.First < pair.Second)
        {
            return pair;
        }

        findings.Refuse(at, $"low-high in {range.Unit}, the low end first and smaller, each {numbers.Advice}");
        return null;
    }

    /// <summary>Parts of thickener and of water, <c>1:1</c>; null where the file is refused.</summary>
    public (double Thickener, double Water)? Parts(Place at, string text)
    {
        if (InText(text).Split(text, ':') is { First: >= 0.001 and <= 1000, Second: >= 0 and <= 1000 } pair)
        {
            return pair;
        }

        findings.Refuse(at, $"parts of thickener to parts of water such as 1:1, each {numbers.Advice}");
        return null;
    }

    /// <summary>A price, 0 or more; null where the file is refused.</summary>
    public decimal? Price(Place at, string text)
    {
        if (numbers.TryParseMoney(text.Trim(), out var value) && value >= 0)
        {
            return value;
        }

        findings.Refuse(at, $"a price of 0 or more, {numbers.Advice}");
        return null;
    }

    [GeneratedRegex(@"(?<![0-9])0+\.\d|\d\.(?!\d{3}(?!\d))\d", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex DecimalPoint();

    // An exponent may hold the mark too (1e-3-5), so the first mark with a number either side is the one.
    private (double First, double Second)? Split(string text, char mark)
    {
        for (var i = text.IndexOf(mark, StringComparison.Ordinal); i >= 0; i = text.IndexOf(mark, i + 1))
        {
            if (numbers.TryParse(text[..i].Trim(), 0, out var first) && numbers.TryParse(text[(i + 1)..].Trim(), 0, out var second))
            {
                return (first, second);
            }
        }

        return null;
    }
}
