using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Batches;

/// <summary>Makes the plan of a batch from a run: run, size and history in, plan out. Deterministic.</summary>
public static class BatchPlans
{
    /// <summary>Parts that the rest goes in where no curve tells how far to go at once.</summary>
    private const int BlindParts = 3;

    /// <summary>Makes the plan.</summary>
    /// <param name="request">The run, the size, the band and the history.</param>
    public static BatchOutcome Of(BatchPlanRequest request)
    {
        var recipe = Recipe.Of(request.Run);
        if (recipe.Parts.Length == 0)
        {
            return new BatchOutcome.Refused(new BatchRefusal.NothingDosed());
        }

        if (Size(request.Size, recipe) is null)
        {
            return new BatchOutcome.Refused(new BatchRefusal.NoDensity());
        }

        if (recipe.Parts.Length > 1)
        {
            return Blind(request, recipe, new BatchSource.RunOfTwo());
        }

        var stated = request.Band ?? request.Run.Target?.Band;
        return Posteriors.OfCurve(request.Run, stated, request.History) switch
        {
            PosteriorOutcome.Found { Posterior.Evidence.ReadingCount: > 0 } found => Led(request, recipe, found.Posterior, stated),
            PosteriorOutcome.Refused refused => Blind(request, recipe, new BatchSource.RunWithoutCurve(refused.Reason)),
            _ => Blind(request, recipe, new BatchSource.RunWithoutReadings()),
        };
    }

    private static Mass? Size(BatchSize size, Recipe recipe) => size switch
    {
        BatchSize.OfMass mass => mass.Mass,
        BatchSize.OfVolume volume => recipe.MassOf(volume.Volume),
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "not a case of the closed set"),
    };

    /// <summary>A batch whose way the run's curve leads.</summary>
    private static BatchOutcome Led(BatchPlanRequest request, Recipe recipe, Posterior posterior, ViscosityBand? stated)
    {
        if (posterior.Evidence.LowPh is { } ph)
        {
            return new BatchOutcome.Refused(new BatchRefusal.LowPh(ph));
        }

        var name = posterior.Evidence.Thickener.Name;
        var reached = request.Run.PotNow().DoseOf(name);
        var band = stated ?? ViscosityBand.Around(posterior.BodyAt(reached, Study.Level).Median, Target.DefaultTolerance);
        var (final, source, refusal) = BatchAim.Of(posterior, band, stated is not null);
        if (refusal is not null)
        {
            return new BatchOutcome.Refused(refusal);
        }

        var stages = new BatchForecast(posterior, band, request.History, request.Risk).Walk(final);
        return Drawn(request, recipe.With(name, final), stages, new(posterior.Evidence.Run, band, source!, posterior.Evidence.Warnings)
        {
            BaseBody = posterior.BodyAt(Dose.None, Study.Level).Median,
        });
    }

    /// <summary>A batch after a run whose readings tell no curve.</summary>
    private static BatchOutcome Blind(BatchPlanRequest request, Recipe recipe, BatchSource source)
    {
        var rest = (1 - BatchPlan.FirstPart) / BlindParts;
        var stages = Enumerable.Range(0, BlindParts + 1)
            .Select(i => new BatchStage(i == BlindParts ? 1 : BatchPlan.FirstPart + (rest * i), null, null))
            .ToImmutableArray();
        return Drawn(request, recipe, stages, new(request.Run, request.Band ?? request.Run.Target?.Band, source, []));
    }

    private static BatchOutcome Drawn(BatchPlanRequest request, Recipe recipe, ImmutableArray<BatchStage> stages, BatchFrame frame)
    {
        var exact = recipe.For(Size(request.Size, recipe)!.Value);
        var baseStep = BatchScales.ForBase(exact.Base);
        var amounts = recipe.OnBase(BatchScales.Down(exact.Base.Grams, baseStep));
        var additions = new BatchAdditions(amounts, stages, request.ScaleStep);
        if (additions.TooCoarse is { } reason)
        {
            return new BatchOutcome.Refused(reason);
        }

        return new BatchOutcome.Planned(new(frame.Run, recipe, amounts)
        {
            Size = request.Size,
            Volume = recipe.VolumeOf(amounts.Total),
            Band = frame.Band,
            BaseOfRun = frame.BaseBody,
            Source = frame.Source,
            Steps = additions.Steps,
            ScaleStep = additions.ScaleStep,
            BaseScaleStep = baseStep,
            Stir = Stir(request.Run),
            AcidityOfRun = AcidityOf(request.Run),
            Notes =
            [
                .. additions.FewSteps is { } few ? new BatchNote[] { few } : [], .. BatchNotes.Of(request.Run, recipe),
                .. frame.Warnings.Select(w => new BatchNote.OfEvidence(w)),
            ],
            Cautions = [.. recipe.Parts.SelectMany(p => Cautions.For(p.Thickener)).Distinct().OrderBy(c => c == Caution.DataSheetDecides)],
        });
    }

    private static TimeSpan? Stir(Run run)
    {
        TimeSpan[] times =
        [
            .. Steps.Of(run).Skip(1).SelectMany(s => s.Readings).Select(r => r.Reading.Stir)
                .OfType<TimeSpan>().Where(t => t > TimeSpan.Zero).Order(),
        ];
        return times.Length == 0 ? null : times[times.Length / 2];
    }

    private static (Acidity Low, Acidity High)? AcidityOf(Run run)
    {
        Acidity[] read = [.. run.Entries.OfType<Entry.Measured>().Where(m => m.Counts).Select(m => m.Reading.Acidity).OfType<Acidity>()];
        return read.Length == 0 ? null : (read.MinBy(a => a.Ph), read.MaxBy(a => a.Ph));
    }
}

/// <summary>What is asked of a batch.</summary>
/// <param name="Run">The run that it is made after.</param>
/// <param name="Size">How large it is to be.</param>
public sealed record BatchPlanRequest(Run Run, BatchSize Size)
{
    /// <summary>The band aimed at; null for the run's own.</summary>
    public ViscosityBand? Band { get; init; }

    /// <summary>Earlier runs; those with another base or thickener are left aside.</summary>
    public ImmutableArray<Run> History { get; init; } = [];

    /// <summary>The greatest chance of going over that an addition may carry.</summary>
    public Percentage Risk { get; init; } = IncrementPolicy.DefaultRisk;

    /// <summary>Step of the scale that thickener is weighed on; null for the one that the batch needs.</summary>
    public Mass? ScaleStep { get; init; }
}

/// <summary>How large a batch is to be, everything in it counted. The set of cases is closed.</summary>
public abstract record BatchSize
{
    private protected BatchSize()
    {
    }

    /// <summary>By mass.</summary>
    /// <param name="Mass">Above 0.</param>
    public sealed record OfMass(Mass Mass) : BatchSize;

    /// <summary>By volume.</summary>
    /// <param name="Volume">Above 0.</param>
    public sealed record OfVolume(Volume Volume) : BatchSize;
}
