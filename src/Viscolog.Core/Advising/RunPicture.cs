using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Everything that a chart of a run shows, computed once: the terminal, SVG, PDF and PNG all draw these samples.</summary>
/// <param name="Name">The run's name; null where it has none.</param>
/// <param name="Thickener">The thickener on the dose axis; with two the one that makes the body.</param>
/// <param name="ReferenceTemperature">The temperature that all values are stated at.</param>
public sealed record RunPicture(string? Name, string Thickener, Temperature ReferenceTemperature)
{
    /// <summary>How it was read, where the value axis needs it said; null for viscosities read off directly.</summary>
    public string? Method { get; init; }

    /// <summary>The readings that count.</summary>
    public ImmutableArray<PicturedReading> Readings { get; init; } = [];

    /// <summary>The string lengths read.</summary>
    public ImmutableArray<PicturedString> Strings { get; init; } = [];

    /// <summary>The string lengths wanted; null where the run states none.</summary>
    public StringBand? TargetString { get; init; }

    /// <summary>The steps with at least one reading.</summary>
    public ImmutableArray<PicturedStep> Steps { get; init; } = [];

    /// <summary>The posterior curve in rising order of dose.</summary>
    public ImmutableArray<CurveSample> Curve { get; init; } = [];

    /// <summary>The band aimed at; null where the run states none.</summary>
    public ViscosityBand? Target { get; init; }

    /// <summary>The dose limit; null where it could not be told.</summary>
    public DoseLimit? Limit { get; init; }

    /// <summary>Body and string over two doses, which stand in place of readings, steps and curve; null with one thickener.</summary>
    public DosePlane? Plane { get; init; }

    /// <summary>Where base was added, in order of time.</summary>
    public ImmutableArray<PicturedLetDown> LetDowns { get; init; } = [];

    /// <summary>The advised addition of thickener or base; null where nothing is to be added.</summary>
    public NextIncrement? Next { get; init; }
}

/// <summary>What is expected after standing for a time.</summary>
/// <param name="Wait">Time since stirring ended.</param>
/// <param name="Value">The expected value.</param>
public sealed record TimedEstimate(TimeSpan Wait, Estimate Value);

/// <summary>One reading as a plot shows it.</summary>
/// <param name="Step">The place of its step in the run, from 0.</param>
/// <param name="Dose">The dose it was taken at.</param>
/// <param name="Wait">Standing since stirring ended; null where nobody wrote it down.</param>
/// <param name="Value">At the reference temperature.</param>
/// <param name="Expected">What the posterior expects this reading to be.</param>
/// <param name="StandardizedResidual">ln(value/expected) over the repeatability.</param>
/// <param name="Doubted">Whether it lies so far off the others that it counts for less.</param>
public sealed record PicturedReading(
    int Step, Dose Dose, TimeSpan? Wait, Viscosity Value, Viscosity Expected, double StandardizedResidual, bool Doubted)
{
    /// <summary>The place of its entry in the run, from 0.</summary>
    public int Entry { get; init; }
}

/// <summary>One step as a plot shows it: the settled value it leads to and the way there.</summary>
/// <param name="Step">The step's place in the run, from 0.</param>
/// <param name="Dose">Its dose.</param>
/// <param name="Settled">The settled value.</param>
/// <param name="Way">Expected value over the standing time, in rising order of time; empty for the step before any addition.</param>
public sealed record PicturedStep(int Step, Dose Dose, Estimate Settled, ImmutableArray<TimedEstimate> Way);

/// <summary>Base added to the pot as a plot shows it: an arrow from before to after.</summary>
/// <param name="From">The dose before.</param>
/// <param name="Before">The settled body before.</param>
/// <param name="To">The dose after.</param>
/// <param name="After">The settled body after.</param>
public sealed record PicturedLetDown(Dose From, Viscosity Before, Dose To, Viscosity After)
{
    /// <summary>The let-downs among steps: nothing but base makes a dose fall.</summary>
    /// <param name="steps">Dose and settled body, in order of time.</param>
    public static ImmutableArray<PicturedLetDown> Among(IEnumerable<(Dose Dose, Viscosity Body)> steps)
    {
        (Dose Dose, Viscosity Body)[] all = [.. steps];
        return [.. all.Zip(all.Skip(1)).Where(p => p.Second.Dose < p.First.Dose)
            .Select(p => new PicturedLetDown(p.First.Dose, p.First.Body, p.Second.Dose, p.Second.Body))];
    }
}

/// <summary>One string length as a plot shows it.</summary>
/// <param name="Step">The place of its step in the run, from 0.</param>
/// <param name="Dose">The dose it was read at.</param>
/// <param name="Length">How far the string was drawn.</param>
public sealed record PicturedString(int Step, Dose Dose, Length Length);

/// <summary>
/// The advised addition as a plot shows it: an arrow from where the pot is to where it is expected to be. Base leads to a lower dose.
/// </summary>
/// <param name="From">The dose now.</param>
/// <param name="Body">The body now.</param>
/// <param name="To">The dose after the addition.</param>
/// <param name="Expected">The body expected after it.</param>
public sealed record NextIncrement(Dose From, Viscosity Body, Dose To, Estimate Expected);
