namespace Viscolog.Core.Advising;

/// <summary>Finds where something begins to hold along a dose.</summary>
internal static class Threshold
{
    /// <summary>Looks at evenly spaced places first, so that the first crossing is found, and halves the way to it.</summary>
    /// <param name="from">Where it does not hold yet.</param>
    /// <param name="to">The end.</param>
    /// <param name="holds">Whether it holds.</param>
    /// <param name="places">Evenly spaced places looked at.</param>
    /// <param name="halvings">Halvings of the way between two of them.</param>
    /// <returns>The last place where it does not hold and the first where it does; the end twice where it never holds.</returns>
    public static (double Before, double After) Of(double from, double to, Func<double, bool> holds, int places, int halvings)
    {
        var (low, high) = (from, to);
        for (var i = 1; i <= places; i++)
        {
            high = from + ((to - from) * i / places);
            if (holds(high))
            {
                break;
            }

            low = high;
        }

        for (var i = 0; i < halvings && high > low; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = holds(middle) ? (low, middle) : (middle, high);
        }

        return (low, high);
    }
}
