using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>How finely a batch is weighed.</summary>
internal static class BatchScales
{
    /// <summary>Steps of the scale that the smallest addition is to have, as everywhere.</summary>
    public const int LeastSteps = 3;

    /// <summary>Steps of the scale that all thickener together is to have: rounding then stays within half a per cent of the
    /// dose.</summary>
    private const int StepsOfAll = 200;

    /// <summary>Steps of the scale that the base is to have.</summary>
    private const int StepsOfBase = 1000;

    /// <summary>The coarsest step, a power of ten of grams, that weighs additions well enough.</summary>
    public static Mass ForAdditions(double smallest, double all) => Power(Math.Min(smallest / LeastSteps, all / StepsOfAll));

    /// <summary>The coarsest step, a power of ten of grams, that weighs the base well enough.</summary>
    public static Mass ForBase(Mass mass) => Power(mass.Grams / StepsOfBase);

    /// <summary>Rounds down to whole steps.</summary>
    public static Mass Down(double grams, Mass step) => Mass.FromGrams((double)(Steps(grams, step) * (decimal)step.Grams));

    /// <summary>Whole steps in a mass; a last digit that binary fractions can't hold does not cost a step.</summary>
    public static decimal Steps(double grams, Mass step) => (decimal)Math.Floor((grams / step.Grams) + 1e-9);

    private static Mass Power(double most) => Mass.FromGrams(Math.Pow(10, Math.Clamp(Math.Floor(Math.Log10(most) + 1e-9), -4, 3)));
}
