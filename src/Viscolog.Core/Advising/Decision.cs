using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Advising;

/// <summary>Goes from a posterior to one piece of advice: quantities are to come into their bands by what can be dosed.</summary>
internal sealed class Decision
{
    /// <summary>Chance of being over from which on the pot counts as over.</summary>
    private const double OverChance = 0.9;

    /// <summary>
    /// A reading below this part of what was expected was misread rather than that the body fell (a rule of this project).
    /// </summary>
    private const double FallsFar = 0.4;

    /// <summary>Chance that an addition has to add to that of being in band where it is likely already.</summary>
    private const double WorthAdding = 0.02;

    /// <summary>Chance of being unlike its history from which on a user should hear of it.</summary>
    private const double MaybeUnlike = 0.4;

    /// <summary>Water of a stock, over the pot, from which on it thins the pot noticeably (a rule of this project).</summary>
    private const double MuchWater = 0.05;

    private readonly Situation _at;
    private readonly DecisionSettings _settings;
    private readonly AdditionPolicy _policy;
    private readonly List<AdviceWarning> _warnings;

    public Decision(StudyRequest request, ViscosityBand band, Posterior posterior)
    {
        _at = new(request, band, posterior);
        (_policy, _settings) = _at.Thickeners.Length == 1
            ? ((AdditionPolicy)new OneThickener(_at), DecisionSettings.One)
            : (new TwoThickeners(_at), DecisionSettings.Two);
        _warnings = [.. posterior.Evidence.Warnings.Select(w => new AdviceWarning.OfEvidence(w)), .. Doubts()];
    }

    /// <summary>Decides.</summary>
    public Advice Decide() => Finish(Decided());

    private Move Decided()
    {
        return _at.Evidence.LowPh is { } ph ? Move.GiveUp(Remedy.RaisePh, new AdviceReason.LowPh(ph))
            : DoseLimits.HasFreshLumps(_at.Run) ? Move.ReadBody(new AdviceReason.LumpsSeen())
            : Unread() ?? FallenTwice() ?? Unsettled(new(_at.Posterior, _at.Step)) ?? Judged();
    }

    private Move? Unread()
    {
        if (_at.Step.Readings.IsEmpty)
        {
            return _at.Step.LeftOut > 0 ? Move.ReadBody(new AdviceReason.TooFarFromReference(_at.Run.ReferenceTemperatureInForce))
                : !_at.IsRead(Quantity.Body) ? Move.ReadBody(new AdviceReason.NothingRead())
                : Move.ReadBody(new AdviceReason.NotReadSinceChange(), _at.WaitFor(_at.Posterior.ChangesIn(_at.Step)));
        }

        return _at.Aims.Any(a => _at.ReadingsOf(a.Quantity) == 0)
            ? Move.ReadString(new AdviceReason.StringNotRead(_at.IsRead(Quantity.Stringiness))) : null;
    }

    /// <summary>What the last step's body readings call for before they can be judged; null where they can.</summary>
    private Move? Unsettled(StepChecks checks)
    {
        var contradiction = _policy.IsReadOften(Quantity.Body) ? null : checks.Contradiction();
        if (checks.Falls && contradiction is not { Ratio: < FallsFar })
        {
            return Move.ReadBody(new AdviceReason.Falls());
        }

        if (contradiction is not null)
        {
            return Move.ReadBody(new AdviceReason.Contradicted(contradiction));
        }

        // A pot that is over while it still builds is over, and no waiting brings a hopeless target nearer.
        return checks.IsSettled || _at.Over(Quantity.Body, _at.Now) >= _settings.SurelyOver || _policy.IsHopeless
            ? null
            : new(
                new BenchAction.Wait(TimeSpan.FromSeconds(checks.MoreWait)),
                new AdviceReason.StillBuilds(Math.Exp(checks.Remaining) - 1, Percentage.FromFraction(_at.Evidence.Repeatability)));
    }

    private Move Judged()
    {
        var inBand = _at.AllInBand(_at.Now);
        if (_settings.SecondLooks.FirstOrDefault(l => inBand >= l.From && inBand < l.To
            && _at.Step.Readings.Length < l.Readings) is { } look)
        {
            return Move.ReadBody(look.Why, LookAfter());
        }

        if (inBand >= _settings.StopChance)
        {
            return new(new BenchAction.Stop(), new AdviceReason.InBand());
        }

        if (IsBandTooNarrow && _policy.IsReadOften(Quantity.Body) && Math.Abs(_at.Median(Quantity.Body, _at.Now) - _at.Aims[0].Middle)
            < 2 * _at.Posterior.Repeatability)
        {
            return Move.GiveUp(Remedy.WiderBand, new AdviceReason.BandTooNarrow(
                Percentage.FromFraction(Math.Exp(HalfBand) - 1), Percentage.FromFraction(_at.Posterior.Repeatability)));
        }

        foreach (var aim in _at.Aims)
        {
            var over = _at.Over(aim.Quantity, _at.Now);
            if (over >= OverChance || (over >= 0.5 && _policy.IsReadOften(aim.Quantity)))
            {
                return new LetDowns(_at, _settings).ToAim(aim.Quantity);
            }
        }

        if (Falling((steps, aim) => FallsByDose.Repeated(steps, aim, Scatter(aim))) is { } falling)
        {
            return falling;
        }

        var addition = _policy.Choose();
        if (inBand >= _settings.NoBetterFrom && (addition is null || addition.BestChance < inBand + WorthAdding))
        {
            return _policy.Repeat() ?? (inBand >= 0.5 ? new(new BenchAction.Stop(), new AdviceReason.LikelyInBand()) : _policy.Stuck());
        }

        return _policy.InsteadOf(addition) ?? Add(addition!);
    }

    private double HalfBand => (_at.Aims[0].High - _at.Aims[0].Low) / 2;

    /// <summary>Whether even as many readings as are ever asked for, all on the aim, could not tell that the pot is in band.</summary>
    private bool IsBandTooNarrow
        => NormalTable.Below(HalfBand * Math.Sqrt(_settings.EnoughBodies) / _at.Posterior.Repeatability) < (1 + _settings.StopChance) / 2;

    /// <summary>Two falls in a row speak for themselves, unless the pot is in band already or over.</summary>
    private Move? FallenTwice()
        => _at.AllInBand(_at.Now) >= _settings.NoBetterFrom || _at.Over(Quantity.Body, _at.Now) >= 0.5
            ? null
            : Falling((steps, aim) => FallsByDose.TwiceInARow(
                steps, aim, aim == Quantity.Body ? _at.Evidence.Repeatability : _at.Evidence.StringRepeatability));

    /// <summary>What is to be done about a quantity that falls as its thickener goes in; null where none does.</summary>
    private Move? Falling(Func<ImmutableArray<EvidenceStep>, Quantity, ImmutableArray<double>?> values)
    {
        foreach (var aim in _at.Aims)
        {
            if (values(_at.Evidence.Steps, aim.Quantity) is { } fallen)
            {
                var why = new AdviceReason.FallsWithDose(aim.Quantity, _at.Thickener(aim.Quantity).Name, fallen);
                return Move.GiveUp(Remedy.FindCause, why);
            }
        }

        return null;
    }

    private double Scatter(Quantity quantity) => quantity == Quantity.Body ? _at.Posterior.Repeatability : _at.Evidence.StringRepeatability;

    /// <summary>A further look at a step that may still build comes as late as the pot has stood, and so shows whether it does.</summary>
    private TimeSpan? LookAfter()
    {
        var checks = new StepChecks(_at.Posterior, _at.Step);
        return checks.Remaining > Settled.Bound(_at.Posterior.Repeatability) / 4 ? TimeSpan.FromSeconds(checks.MoreWait) : null;
    }

    private Move Add(Addition addition)
    {
        var (thickener, scale) = (_at.Thickener(addition.Quantity), _at.Run.ScaleStepInForce);
        var mass = _at.Pot.ThickenerToReach(thickener.Name, Dose.FromPercent(addition.DosePercent));
        var steps = Math.Floor((thickener.PouredFor(mass).Grams / scale.Grams) + 1e-9);
        if (steps < 3)
        {
            _warnings.Add(new AdviceWarning.FewScaleSteps());
        }

        if (steps < 1)
        {
            return _policy.InsteadOfTooSmall() ?? Move.GiveUp(Remedy.WeighFiner, new AdviceReason.IncrementTooSmall(scale));
        }

        var poured = Mass.FromGrams(Math.Round(steps * scale.Grams, 9));
        var water = Mass.FromGrams(poured.Grams * (1 - thickener.Dilution.ThickenerFraction));
        if (water.Grams > MuchWater * _at.Pot.Total.Grams)
        {
            _warnings.Add(new AdviceWarning.StockWater(water, _at.Pot.Total));
        }

        var after = _at.DosesIn(_at.Pot.Add(thickener, poured));
        var (doseNow, dose) = (_at.DoseNow(addition.Quantity), after.Of(addition.Quantity));
        return new(
            new BenchAction.Add(poured, Dose.FromPercent(dose - doseNow), Dose.FromPercent(dose),
                _at.WaitFor(_at.Posterior.RisesBetween(_at.Now, after))),
            _policy.Why(addition))
        {
            About = addition.Quantity,
            After = after,
            Plan = _policy.Plan(addition, dose),
        };
    }

    private IEnumerable<AdviceWarning> Doubts()
    {
        var (posterior, unlike) = (_at.Posterior, _at.Posterior.ChanceUnlikeHistory.Fraction);
        var swellable = _at.Thickeners.FirstOrDefault(t => t.Chemistry == ThickenerChemistry.AlkaliSwellable);
        if (swellable is not null && !_at.Run.Entries.Any(e => e is Entry.Measured { Counts: true, Reading.Acidity: not null }))
        {
            yield return new AdviceWarning.PhNotRead(swellable.Name);
        }

        if (!_at.Step.Readings.IsEmpty && new StepChecks(posterior, _at.Step).RiseWithoutEnd is { } rise)
        {
            yield return new AdviceWarning.RisesWithoutEnd(
                TimeSpan.FromSeconds(_at.Step.Readings[^1].WaitSeconds), Percentage.FromFraction(Math.Exp(rise) - 1));
        }

        if (_at.Thickeners.Length > 1)
        {
            yield break;
        }

        if (HasHardlyThickened())
        {
            yield return new AdviceWarning.HardlyThickened();
        }

        var isSure = unlike >= HistorySettings.SurelyUnlike;
        if (isSure || unlike >= MaybeUnlike)
        {
            yield return new AdviceWarning.UnlikeHistory(isSure);
        }

        if (_at.Request.History.Length > 0 && posterior.Prior.Runs == 0 && !isSure)
        {
            yield return new AdviceWarning.HistoryLeftAside(_at.Thickener(Quantity.Body).Name);
        }
    }

    /// <summary>Whether a dose that ought to show (a quarter of the usual range) has raised the body by no more than readings
    /// scatter.</summary>
    private bool HasHardlyThickened()
    {
        var rise = _at.Median(Quantity.Body, _at.Now) - _at.Median(Quantity.Body, Dose.None);
        return _at.Step.Readings.Length > 0
            && _at.Step.Dose >= _at.Evidence.RangeTop / 4
            && _at.Evidence.Steps[0].Readings.Length > 0
            && rise < 2 * _at.Posterior.Repeatability;
    }

    private Advice Finish(Move move)
    {
        var after = move.After ?? _at.Now;
        var chances = _at.At(after);
        return new(move.Action, move.Why)
        {
            Quantities = [.. _at.Aims.Zip(chances, (aim, chance) => Advised(aim.Quantity, move.After, chance))],
            Thickeners = [.. _at.Aims.OrderBy(a => a.Quantity != move.About).Select(a => Dosable(a.Quantity, move))],
            ChanceAllInBand = Chance(chances.Aggregate(1.0, (all, c) => all * c.InBand)),
            WhatIf = _at is { Thickeners.Length: 1, Request.WhatIf: { } poured } && _at.IsRead(Quantity.Body)
                ? WhatIfs.Of(_at.Request, poured, _at.Band, _at.Posterior, _at.Limits[0])
                : null,
            Warnings = [.. _warnings],
            Cautions = Cautions.For(_at.Thickeners),
        };
    }

    private AdvisedQuantity Advised(Quantity quantity, Doses? after, QuantityChances chances)
    {
        var now = _at.IsRead(quantity) ? _at.Posterior.At(_at.Now, quantity) : null;
        var expected = after is { } doses ? _at.Posterior.At(doses, quantity) : null;
        var (inBand, over) = (Chance(chances.InBand), Chance(chances.Over));
        if (quantity == Quantity.Body)
        {
            return new AdvisedQuantity.OfBody(_at.Band, now?.ToEstimate(Study.Level), expected?.ToEstimate(Study.Level))
            {
                ChanceInBand = inBand,
                ChanceOver = over,
            };
        }

        return new AdvisedQuantity.OfString(_at.Run.TargetString!, now?.ToLengths(Study.Level), expected?.ToLengths(Study.Level))
        {
            ChanceInBand = inBand,
            ChanceOver = over,
        };
    }

    private AdvisedThickener Dosable(Quantity quantity, Move move)
    {
        var name = _at.Thickener(quantity).Name;
        return new(name, _at.Pot.DoseOf(name), _at.Pot.ShareOf(name), _at.Limit(quantity))
        {
            Planned = move.Plan.IsEmpty ? null : move.Plan[(int)quantity],
        };
    }

    private static Percentage Chance(double fraction) => Percentage.FromFraction(Math.Clamp(fraction, 0, 1));
}
