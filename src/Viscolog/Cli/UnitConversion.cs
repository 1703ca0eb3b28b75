using System.Globalization;
using Viscolog.Cli.Json;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli;

/// <summary>One value to another unit.</summary>
internal static class UnitConversion
{
    private const decimal Most = 1e15m;

    public static ExitCode Run(Invocation call, string? typed, string from, string to, Density? density)
    {
        if (!decimal.TryParse(typed, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || Math.Abs(value) > Most)
        {
            return call.Refuse($"read '{typed}', expected a number with a decimal point and no unit, at most 1e15 in size");
        }

        if (Unit.Find(from) is not { } given || Unit.Find(to) is not { } wanted)
        {
            return call.Refuse($"read '{(Unit.Find(from) is null ? from : to)}', expected a unit: {string.Join(", ", Unit.All.SelectMany(u => u.Typed))}");
        }

        if (given.Kind != UnitKind.Temperature && value < 0)
        {
            return call.Refuse($"read '{typed}', expected 0 or more {given.Symbol}");
        }

        if (given.To(wanted, value, density) is not { } result)
        {
            return call.Refuse(density is null && given.To(wanted, value, Density.FromGramsPerMilliliter(1)) is not null
                ? $"{given.Symbol} to {wanted.Symbol} needs --density"
                : $"{given.Symbol} and {wanted.Symbol} don't measure the same thing");
        }

        // The grain of decimal arithmetic is far below what anybody measures.
        var shown = decimal.Round(result, 12);
        if (call.Json)
        {
            call.Print(new UnitAnswer((double)value, given.Symbol, (double)shown, wanted.Symbol));
            return ExitCode.Done;
        }

        call.Terminal.Line($"{Text(value)} {given.Symbol} = {Text(shown)} {wanted.Symbol}");
        return ExitCode.Done;
    }

    private static string Text(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);
}
