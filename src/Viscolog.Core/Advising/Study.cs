using System.Collections.Immutable;
using Viscolog.Core.Fitting;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>
/// All that a run says, with one thickener or two: evidence, posterior, advice, picture and fit. Each is worked out when it is first asked
/// for and
/// never changes. Deterministic: the same request gives the same study.
/// </summary>
public sealed class Study
{
    /// <summary>Level of the intervals that advice, pictures and reports state.</summary>
    public static readonly Percentage Level = Estimate.UsualLevel;

    private readonly Lazy<Advising> _advising;
    private readonly Lazy<RunPicture> _picture;
    private readonly Lazy<RunPicture> _curve;
    private readonly Lazy<RunFit> _fit;

    private Study(StudyRequest request, Posterior posterior)
    {
        (Request, Posterior) = (request, posterior);
        _advising = new(Advise);
        _picture = new(() => RunPictures.Of(Posterior, Band, Advice, Level));
        _curve = new(() => RunPictures.Of(Posterior, Band, null, Level));
        _fit = new(() => RunFit.Of(this));
    }

    /// <summary>What was asked.</summary>
    public StudyRequest Request { get; }

    /// <summary>The run as it was asked about.</summary>
    public Run Run => Request.Run;

    /// <summary>The band aimed at; null for none.</summary>
    public ViscosityBand? Band => Request.BandInForce;

    /// <summary>What the run says of body, and with two thickeners of string.</summary>
    public Posterior Posterior { get; }

    /// <summary>The evidence it rests on; its run carries the repeatability in force.</summary>
    public Evidence Evidence => Posterior.Evidence;

    /// <summary>Whether any reading of the body counts.</summary>
    public bool IsRead => Evidence.ReadingCount > 0;

    /// <summary>Whether it is about body and string over the doses of two thickeners.</summary>
    public bool IsOfTwo => Evidence.StringThickener is not null;

    /// <summary>What to do with the pot; null where there is none, and <see cref="NoAdvice"/> says why.</summary>
    public Advice? Advice => _advising.Value.Advice;

    /// <summary>Why there is no advice; null where there is.</summary>
    public NoAdvice? NoAdvice => _advising.Value.Missing;

    /// <summary>What a chart over the dose, or over both, shows.</summary>
    public RunPicture Picture => _picture.Value;

    /// <summary>The same without what is advised of one thickener.</summary>
    public RunPicture Curve => IsOfTwo ? Picture : _curve.Value;

    /// <summary>Whether anything was read that a picture can show.</summary>
    public bool IsDrawn => IsRead || Evidence.StringThickener is not null;

    /// <summary>Where the pot stands now.</summary>
    public PotStanding Standing => field ??= PotStanding.Of(this);

    /// <summary>The dose that reaches the aim; null where none is stated or reached, and with two thickeners.</summary>
    public DoseEstimate? DoseForTarget => !IsOfTwo && Band is { } band ? Posterior.DoseFor(band.Aim, Level) : null;

    /// <summary>Both doses where the thickener that makes the body has a certain one and another stays where it is.</summary>
    public Doses DosesAt(Dose body)
        => new(body, Evidence.StringThickener is { } other ? Run.PotNow().DoseOf(other.Name) : Dose.None);

    /// <summary>The string at doses; null with one thickener.</summary>
    public LengthEstimate? StringAt(Doses doses) => IsOfTwo ? Posterior.StringAt(doses, Level) : null;

    /// <summary>The curves fitted, with their parameters.</summary>
    public RunFit Fit => _fit.Value;

    /// <summary>Studies a run.</summary>
    /// <param name="request">The run, the band, the risk and the history.</param>
    public static StudyOutcome Of(StudyRequest request) => Posteriors.Of(request.Run, request.BandInForce, request.History) switch
    {
        PosteriorOutcome.Found { Posterior: var posterior } => new StudyOutcome.Made(new(request, posterior)),
        PosteriorOutcome.Refused refused => new StudyOutcome.Refused(refused.Reason),
        var other => throw new ArgumentOutOfRangeException(nameof(request), other, "not a case of the closed set"),
    };

    /// <summary>The same without the addition that was asked about; its posterior is this one's.</summary>
    internal Study WithoutWhatIf() => new(Request with { WhatIf = null }, Posterior);

    private Advising Advise()
    {
        if (Band is not { } band)
        {
            return new(null, new NoAdvice.NoTarget());
        }

        NoAdvice? missing = IsOfTwo
            && Run.TargetString is null ? new NoAdvice.NoStringTarget([.. Run.Thickeners.Select(t => t.Name)]) : TooFar();
        return missing is null ? new(new Decision(Request, band, Posterior).Decide(), null) : new(null, missing);
    }

    private NoAdvice.TooFarToForecast? TooFar()
    {
        if (IsOfTwo || Request.WhatIf is not { } poured)
        {
            return null;
        }

        var after = WhatIfs.DoseAfter(Run, Evidence.Thickener, poured);
        var most = Posterior.ForecastUpTo * Evidence.Thickener.UsualRange.Top.Percent;
        return after.Percent <= most ? null : new(poured, after, Dose.FromPercent(most));
    }

    private sealed record Advising(Advice? Advice, NoAdvice? Missing);
}

/// <summary>What is asked of a run.</summary>
/// <param name="Run">The run so far.</param>
public sealed record StudyRequest(Run Run)
{
    /// <summary>The band aimed at; null for the run's own.</summary>
    public ViscosityBand? Band { get; init; }

    /// <summary>The greatest chance of going over that an addition may carry.</summary>
    public Percentage Risk { get; init; } = IncrementPolicy.DefaultRisk;

    /// <summary>An addition to be judged beside the advice, dilution water included; null for none.</summary>
    public Mass? WhatIf { get; init; }

    /// <summary>Earlier runs; those with another base or thickener are left aside.</summary>
    public ImmutableArray<Run> History { get; init; } = [];

    /// <summary>The band aimed at, the run's own where none is stated; null where there is none.</summary>
    public ViscosityBand? BandInForce => Band ?? Run.Target?.Band;
}

/// <summary>Whether a run could be studied. The set of cases is closed.</summary>
public abstract record StudyOutcome
{
    private protected StudyOutcome()
    {
    }

    /// <summary>What to do with the pot; null where there is no study, or no advice in it.</summary>
    public Advice? Advice => (this as Made)?.Study.Advice;

    /// <summary>It could.</summary>
    /// <param name="Study">The study.</param>
    public sealed record Made(Study Study) : StudyOutcome;

    /// <summary>It could not.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Refused(EvidenceTrouble Reason) : StudyOutcome;
}

/// <summary>Why a study holds no advice. The set of cases is closed.</summary>
public abstract record NoAdvice
{
    private protected NoAdvice()
    {
    }

    /// <summary>No band of the body is aimed at.</summary>
    public sealed record NoTarget : NoAdvice;

    /// <summary>Two thickeners are in the pot, and no string is stated that they are to bring.</summary>
    /// <param name="Thickeners">The two, in the order of the run.</param>
    public sealed record NoStringTarget(ImmutableArray<string> Thickeners) : NoAdvice;

    /// <summary>The addition asked about leads beyond the doses that can be forecast.</summary>
    /// <param name="Poured">The addition.</param>
    /// <param name="After">The dose after it.</param>
    /// <param name="Most">The greatest dose of which there is a forecast.</param>
    public sealed record TooFarToForecast(Mass Poured, Dose After, Dose Most) : NoAdvice;
}

/// <summary>The curves fitted to a run.</summary>
/// <param name="Shapes">The shapes of the body's curve, heaviest first.</param>
public sealed record RunFit(ImmutableArray<ShapeFit> Shapes)
{
    /// <summary>What the body has beside its shape; empty with one thickener.</summary>
    public ImmutableArray<FittedParameter> Body { get; init; } = [];

    /// <summary>The string's curve; empty with one thickener.</summary>
    public ImmutableArray<FittedParameter> Strings { get; init; } = [];

    /// <summary>The dose whose reading teaches most; null where none does, and with two thickeners.</summary>
    public TestDose? TestNext { get; init; }

    /// <summary>Fits the curves of a study.</summary>
    internal static RunFit Of(Study study)
    {
        if (!study.IsOfTwo)
        {
            return new(ShapeFits.Of(study.Posterior)) { TestNext = TestDoses.Next(study.Posterior) };
        }

        var fit = PairFits.Of(study.Posterior);
        return new(fit.Shapes) { Body = fit.Body, Strings = fit.Strings };
    }
}
