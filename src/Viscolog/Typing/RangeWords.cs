using Viscolog.Tables;

namespace Viscolog.Typing;

/// <summary>Which numbers may be typed, in words; what files may hold is said by <see cref="NumberRange.Words"/>, in English.</summary>
internal static class RangeWords
{
    /// <summary>What may be typed.</summary>
    /// <param name="range">The numbers allowed.</param>
    /// <param name="read">What was typed; null where that is no number.</param>
    public static string Of(NumberRange range, double? read)
    {
        // Decimal, so that a bound in another unit shows no rounding.
        var written = (decimal)Math.Pow(10, -range.Shift);
        var (least, most) = ((decimal)range.Least * written, (decimal)range.Most * written);
        var number = range.Unit.Length == 0 ? Say("a number") : Say($"a number in {range.Unit}");
        if (range.Least == NumberRange.Any.Least)
        {
            return read is null ? number : Say($"{number} of at most {most} in size");
        }

        if (range.Most <= 100 && !range.Above)
        {
            return Say($"{number}, between {least} and {most}");
        }

        var low = (range.Least, range.Above) switch
        {
            (0, true) => Say($"{number}, above 0"),
            (0, false) => Say($"{number}, 0 or more"),
            (_, true) => Say($"{number}, above {least}"),
            _ => Say($"{number}, at least {least}"),
        };
        return read > range.Most || range.Most <= 100 ? Say($"{low} and at most {most:0.###}") : low;
    }
}
