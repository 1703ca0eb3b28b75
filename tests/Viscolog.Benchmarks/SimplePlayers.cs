using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Benchmarks;

/// <summary>Rules that people use without statistics. Each waits five minutes before it reads.</summary>
internal static class SimplePlayers
{
    private const int MostMoves = 150;
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(300);

    /// <summary>The same step until a reading is in the band or over it.</summary>
    public static Played Fixed(PracticePot pot, double percent)
    {
        var low = pot.Run.Target!.Band.Low;
        var doses = 0;
        pot.Read(TimeSpan.Zero);
        while (doses < MostMoves && Viscosity.FromLn(LastLn(pot)) < low)
        {
            Pour(pot, percent);
            doses++;
        }

        return new(doses, doses + 1, 0);
    }

    /// <summary>
    /// Goes where a line in ln through the last two readings meets the aim, or a part of the way; at most 0.3 of the range at once.
    /// </summary>
    public static Played Extrapolated(PracticePot pot, double damping)
    {
        var band = pot.Run.Target!.Band;
        pot.Read(TimeSpan.Zero);
        var (before, percent, doses) = (LastLn(pot), 0.5, 0);
        while (doses < MostMoves && LastLn(pot) < band.Low.Ln)
        {
            before = LastLn(pot);
            Pour(pot, percent);
            doses++;
            var slope = Math.Max(0.05, (LastLn(pot) - before) / percent);
            percent = Math.Clamp(damping * (band.Aim.Ln - LastLn(pot)) / slope, 0.05, 1.5);
        }

        return new(doses, doses + 1, 0);
    }

    /// <summary>ln of the last reading.</summary>
    public static double LastLn(PracticePot pot)
        => ((InstrumentValue.Direct)((Entry.Measured)pot.Run.Entries[^1]).Reading.Value!).Viscosity.Ln;

    private static void Pour(PracticePot pot, double percent)
    {
        pot.Add(Mass.FromGrams(pot.Run.BaseMass.Grams * percent / 100));
        pot.Read(Long);
    }
}
