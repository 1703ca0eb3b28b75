using System.CommandLine;
using Viscolog.Core.Batches;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli;

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

            result.AddError($"{name}: read '{result.Tokens[0].Value}', expected a size with its unit, such as \"5 kg\", \"750 g\", \"10 L\" or \"500 mL\": 1 g or mL at least, with a decimal point");
            return null;
        },
    };

    /// <summary>A size as typed; null where it is none.</summary>
    public static BatchSize? Read(string text)
    {
        var mark = text.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or ' ').Count();
        if (mark <= 0 || NumberOption.Read(text[..mark].Trim()) is not { } number || Unit.Find(text[mark..].Trim()) is not { } unit || number is <= 0 or > Most)
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
