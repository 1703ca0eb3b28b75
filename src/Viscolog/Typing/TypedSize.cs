using Viscolog.Core.Batches;
using Viscolog.Core.Quantities;
using Viscolog.Tables;

namespace Viscolog.Typing;

/// <summary>The size of a batch as it is typed: a mass, or a volume with its unit.</summary>
internal static class TypedSize
{
    /// <summary>What ought to stand there.</summary>
    public static string Expected
        => Say("a size with its unit, such as \"5 kg\", \"750 g\", \"10 L\" or \"500 mL\": 1 g or mL at least");

    /// <summary>A batch of less than a gram can't be dosed.</summary>
    private static readonly NumberRange Grams = NumberRange.Grams with { Least = 1 };

    /// <summary>The size, in grams where no unit stands behind the number; null with the reason.</summary>
    public static BatchSize? Read(string text, out string? error)
    {
        if (TypedNumber.Read(text, Grams, out _) is { } grams)
        {
            error = null;
            return new BatchSize.OfMass(Mass.FromGrams(grams));
        }

        var milliliters = TypedNumber.Read(text, Grams with { Unit = "mL" }, out _);
        error = milliliters is null ? Say($"read '{text.Trim()}', expected {Expected}") : null;
        return milliliters is { } volume ? new BatchSize.OfVolume(Volume.FromMilliliters(volume)) : null;
    }
}
