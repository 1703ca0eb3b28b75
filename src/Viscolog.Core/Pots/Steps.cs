using System.Collections.Immutable;

namespace Viscolog.Core.Pots;

/// <summary>Cuts a run into its steps.</summary>
public static class Steps
{
    /// <summary>
    /// The run's steps in order. A step begins with the pot and whenever thickener, base or water goes in; entries that are void count
    /// for nothing.
    /// </summary>
    /// <exception cref="ArgumentException">An entry does not fit the run (see <see cref="Run.After"/>).</exception>
    public static ImmutableArray<Step> Of(Run run)
    {
        var steps = ImmutableArray.CreateBuilder<Step>();
        var readings = ImmutableArray.CreateBuilder<PlacedReading>();
        var pot = Pot.With(run.BaseMass);
        var pouring = false;
        for (var i = 0; i < run.Entries.Length; i++)
        {
            var entry = run.Entries[i];
            if (!entry.Counts)
            {
                continue;
            }

            if (Begins(entry) && !pouring)
            {
                steps.Add(new(pot, readings.ToImmutable()));
                readings.Clear();
                pouring = true;
            }

            pot = run.After(pot, entry);
            if (entry is Entry.Measured measured)
            {
                readings.Add(new(i, measured.Reading));
                pouring = false;
            }
        }

        steps.Add(new(pot, readings.ToImmutable()));
        return steps.ToImmutable();
    }

    /// <summary>Whether the entry changes what a reading reads, so that a new step begins with it.</summary>
    public static bool Begins(Entry entry) => entry is Entry.Dosed or Entry.LetDown or Entry.Watered;
}

/// <summary>A pot and the readings taken of it, up to the next change of what it holds.</summary>
/// <param name="Pot">The pot when they were taken; a sample taken between them changes neither dose nor share.</param>
/// <param name="Readings">The readings that count, in order, each with the place of its entry in the run.</param>
public sealed record Step(Pot Pot, ImmutableArray<PlacedReading> Readings);

/// <summary>A reading and where it stands.</summary>
/// <param name="Entry">The place of its entry in the run, from 0.</param>
/// <param name="Reading">The reading.</param>
public sealed record PlacedReading(int Entry, Reading Reading);
