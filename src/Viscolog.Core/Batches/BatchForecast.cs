using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Batches;

/// <summary>
/// Walks the way to a batch's final dose as advice would lead it: the run and those before it are the history of a new pot, which may be
/// of other lots, and
/// every reading comes out as the run's curve says.
/// </summary>
internal sealed class BatchForecast
{
    /// <summary>Stages at most; the last ends at the final dose in any case.</summary>
    private const int Most = 6;

    /// <summary>A rest below this part of the final dose is no step of its own.</summary>
    private const double Sliver = 0.04;

    /// <summary>What the name of a base that has none is, so that the run is a history of the batch.</summary>
    private const string NoName = "base";

    private readonly Posterior _posterior;
    private readonly ViscosityBand _band;
    private readonly Percentage _risk;
    private readonly Thickener _thickener;
    private readonly Run _batch;
    private readonly Prior _prior;

    public BatchForecast(Posterior posterior, ViscosityBand band, ImmutableArray<Run> history, Percentage risk)
    {
        (_posterior, _band, _risk) = (posterior, band, risk);
        _thickener = posterior.Evidence.Thickener;
        var done = Directly(posterior.Evidence.Run);
        _batch = done with { Entries = [] };
        _prior = History.For(_batch, _thickener,
            [.. history.Where(r => ShearConditions.Agree(r, posterior.Evidence.Run)).Select(Directly), done]);
    }

    /// <summary>The stages up to a dose; the first is <see cref="BatchPlan.FirstPart"/> of it, or less where that already risks going
    /// over.</summary>
    /// <param name="final">The final dose; above 0.</param>
    public ImmutableArray<BatchStage> Walk(Dose final)
    {
        var stages = ImmutableArray.CreateBuilder<BatchStage>();
        var entries = ImmutableArray.Create<Entry>(Reading(Dose.None));
        var known = After(entries);
        var (now, next) = (0.0, First(known, final.Percent));
        while (true)
        {
            next = Rounded(now, next, final.Percent, stages.Count);
            stages.Add(Stage(known, now, next, final.Percent));
            if (next >= final.Percent)
            {
                return stages.ToImmutable();
            }

            // One part of thickener to a base of 100 g is one per cent.
            entries = entries.Add(new Entry.Dosed(_thickener.Name, _thickener.PouredFor(Mass.FromGrams(next - now))))
                .Add(Reading(Dose.FromPercent(next)));
            now = next;
            known = After(entries);
            next = IncrementPolicy.Choose(
                known, _band, now, final.Percent, _thickener.UsualRange.Top.Percent, _risk.Fraction)?.DosePercent ?? final.Percent;
        }
    }

    private BatchStage Stage(Posterior known, double now, double next, double final)
    {
        var body = known.At(Dose.FromPercent(next));
        return new(next / final, Standing(now, next), body.ToEstimate(Study.Level))
        {
            ChanceOver = Percentage.FromFraction(Math.Clamp(body.ChanceAbove(_band.High.Ln), 0, 1)),
        };
    }

    /// <summary>The first dose. Less than usual where what is known of the batch before it gives too great a chance of going
    /// over.</summary>
    private double First(Posterior known, double final)
    {
        const double grain = 0.05;
        var part = BatchPlan.FirstPart;
        while (part > 2 * grain && known.At(Dose.FromPercent(part * final)).ChanceAbove(_band.High.Ln) > BatchPlan.FirstRisk)
        {
            part -= grain;
        }

        return part * final;
    }

    private static double Rounded(double now, double next, double final, int stages)
    {
        var least = now + (Sliver * final);
        next = Math.Max(next, least);
        return stages >= Most - 1 || final - next < Sliver * final ? final : next;
    }

    private TimeSpan Standing(double now, double next) => TimeSpan.FromSeconds(BuildUp.WaitUntilBelow(
        _posterior.RisesBetween(Dose.FromPercent(now), Dose.FromPercent(next)),
            _posterior.Kinetics(), Settled.Bound(_posterior.Repeatability)));

    private Posterior After(ImmutableArray<Entry> entries)
        => Evidence.Of(_batch with { BaseMass = Mass.FromGrams(100), Entries = entries }, _thickener) is EvidenceOutcome.Usable usable
            ? Posteriors.WithHistory(usable.Evidence, _prior, _band)
            : throw new InvalidOperationException("readings that were made up can't be used");

    private Entry.Measured Reading(Dose dose) => new Entry.Measured(new()
    {
        Value = new InstrumentValue.Direct(_posterior.BodyAt(dose, Study.Level).Median),
        Temperature = _batch.ReferenceTemperatureInForce,
    });

    /// <summary>The run as if its bodies had been read off directly, so that what is made up goes with it whatever its method.</summary>
    private static Run Directly(Run run) => run with
    {
        Base = run.Base with { Name = run.Base.Name ?? NoName },
        Method = Method.Direct,
        Setup = MethodSetup.None with { TemperatureCoefficient = run.Setup.TemperatureCoefficient },
        Repeatability = run.RepeatabilityInForce,
        Entries = [.. run.Entries.Select(e => Directly(run, e))],
    };

    private static Entry Directly(Run run, Entry entry)
    {
        if (entry is not Entry.Measured { Reading: { Value: { } value } reading } measured)
        {
            return entry;
        }

        return Conversions.ToBody(run.MethodInForce, value, run.Setup, run.Base.Density) is Conversion.Converted { Reading.Body: { } body }
            ? measured with { Reading = reading with { Value = new InstrumentValue.Direct(body) } }
            : measured with { VoidReason = measured.VoidReason ?? "can't be converted" };
    }
}
