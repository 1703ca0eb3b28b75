using System.Diagnostics.CodeAnalysis;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Sampling;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// The likelihood of one curve of the body over two doses: ln body = level + rise of a shape over the body thickener's dose + the string
/// thickener's rise k·z^p + m·z^p·zA, with the level walking along the path of the doses as it does for one thickener. Level, k and m are
/// integrated out; a draw holds the shape's parameters, ln p, ln τ and the logarithm of the discrepancy.
/// </summary>
internal sealed class PairBodyFilter
{
    private readonly double[] _lastWait;
    private readonly Nuisances _nuisances;
    private readonly double[] _rise;
    private readonly double[] _first;
    private readonly double[] _second;
    private readonly double[] _startRise;
    private readonly double[] _startFirst;
    private readonly double[] _startSecond;
    private readonly BodyReading[][] _readings;

    public PairBodyFilter(Evidence evidence, PairPath path)
    {
        Path = path;
        _nuisances = new(evidence);
        _readings = [.. evidence.Steps.Select(s => s.Readings.ToArray())];
        _lastWait = [.. _readings.Select(r => r.Length == 0 ? double.PositiveInfinity : r.Max(x => x.LogWait))];
        (_rise, _first, _second) = (new double[path.Count], new double[path.Count], new double[path.Count]);
        (_startRise, _startFirst, _startSecond) = (new double[path.Count], new double[path.Count], new double[path.Count]);
    }

    /// <summary>The way through the doses.</summary>
    public PairPath Path { get; }

    /// <summary>Steps with their _readings.</summary>
    public int StepCount => _readings.Length;

    /// <summary>The prior of a draw.</summary>
    public static Mixture PriorOf(Shape shape)
    {
        var mean = PairBodyParameters.Row(
            shape.Parameters.Select(p => Math.Log(p.Median)), 0, 0, Math.Log(shape.DiscrepancyMedian));
        var sd = PairBodyParameters.Row(
            shape.Parameters.Select(p => p.LogSd), PairSettings.ExponentLogSd, 1, shape.DiscrepancyLogSd);
        var share = shape.PriorWeight / Shapes.All.Sum(s => s.PriorWeight);
        return new([GaussianComponent.Independent(share, mean, sd)]);
    }

    /// <summary>Variance that the level walks over a way.</summary>
    public static double Walk(double discrepancy, (double Body, double String) way)
        => (discrepancy * discrepancy * (way.Body + way.String)) + (PairSettings.DiscrepancyAlongString * way.String);

    /// <summary>Variance that the level walks before a step.</summary>
    public double WalkBefore(int step, double discrepancy)
        => step == 0 ? 0 : Walk(discrepancy, Path.Distance(step - 1, Path.Body[step], Path.String[step]));

    /// <summary>The log likelihood of a draw.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="draw">Its parameters.</param>
    /// <param name="states">Takes the state after each step; empty where not wanted.</param>
    public double LogLikelihood(Shape shape, PairBodyParameters draw, Span<WalkState> states)
    {
        var ((kinetics, repeatability, coefficientOff), discrepancy) = (_nuisances.ForLikelihood(draw.Nuisance), draw.Discrepancy);
        Prepare(shape, draw, kinetics);
        var state = new WalkState(
            (Math.Log(PosteriorSettings.BaseMedian), PosteriorSettings.BaseLogSd),
            (PairSettings.BodyRiseMean, PairSettings.BodyRiseSd),
            (PairSettings.CrossMean, PairSettings.CrossSd));
        var likelihood = new LogProduct();
        for (var k = 0; k < _readings.Length; k++)
        {
            var before = WalkBefore(k, discrepancy);
            state.Walk(before);
            foreach (var reading in _readings[k])
            {
                var left = k == 0 ? 0 : kinetics.RemainingAt(reading.LogWait);
                likelihood.Times(state.Update(
                    _first[k] + (left * (_startFirst[k] - _first[k])),
                    _second[k] + (left * (_startSecond[k] - _second[k])),
                    reading.Ln + (coefficientOff * reading.Distance) - _rise[k] - (left * (_startRise[k] - _rise[k])),
                    (repeatability * repeatability) + reading.ExtraVariance + (left * left * before)));
            }

            if (!states.IsEmpty)
            {
                states[k] = state;
            }
        }

        return likelihood.Log;
    }

    /// <summary>
    /// The change of a step from its start to its settled value, with k and m known; after the likelihood of the same draw.
    /// </summary>
    public double ChangeIn(int step, in WalkState state)
        => _rise[step] - _startRise[step] + (state.First * (_first[step] - _startFirst[step])) + (
            state.Second * (_second[step] - _startSecond[step]));

    /// <summary>What all readings share, of a draw.</summary>
    public Nuisance NuisanceOf(PairBodyParameters draw) => _nuisances.At(draw.Nuisance);

    private void Prepare(Shape shape, PairBodyParameters draw, Kinetics kinetics)
    {
        var parameters = draw.LogShape;
        var exponent = draw.Exponent;
        for (var k = 0; k < _readings.Length; k++)
        {
            _rise[k] = k > 0 && Path.Body[k] == Path.Body[k - 1] ? _rise[k - 1] : shape.Rise(parameters, Path.Body[k]);
            _first[k] = k > 0 && Path.String[k] == Path.String[k - 1] ? _first[k - 1] : Form(Path.String[k], exponent);
            _second[k] = _first[k] * Path.Body[k];
            if (k == 0)
            {
                (_startRise[0], _startFirst[0], _startSecond[0]) = (_rise[0], _first[0], _second[0]);
                continue;
            }

            var left = kinetics.RemainingAt(_lastWait[k - 1]);
            _startRise[k] = _rise[k - 1] + (left * (_startRise[k - 1] - _rise[k - 1]));
            _startFirst[k] = _first[k - 1] + (left * (_startFirst[k - 1] - _first[k - 1]));
            _startSecond[k] = _second[k - 1] + (left * (_startSecond[k - 1] - _second[k - 1]));
        }
    }

    /// <summary>The string thickener's form z^p.</summary>
    public static double Form(double z, double exponent) => z <= 0 ? 0 : Math.Pow(z, exponent);
}

/// <summary>One draw of the body over two doses.</summary>
internal sealed class PairBodyDraw : BodyDraw
{
    private readonly Shape _shape;
    private readonly double[] _parameters;
    private readonly double _discrepancy;
    private readonly PairPath _path;
    private readonly WalkState[] _states;

    [SetsRequiredMembers]
    public PairBodyDraw(int shapeIndex, PairBodyParameters draw, PairBodyFilter filter)
    {
        ShapeIndex = shapeIndex;
        _shape = Shapes.All[shapeIndex];
        _parameters = draw.LogShape.ToArray();
        (Exponent, _discrepancy) = (draw.Exponent, draw.Discrepancy);
        (Kinetics, Repeatability, CoefficientOff) = filter.NuisanceOf(draw);
        _path = filter.Path;
        _states = new WalkState[filter.StepCount];
        filter.LogLikelihood(_shape, draw, _states);
        WalkState.Smooth(_states, step => filter.WalkBefore(step, _discrepancy));

        Changes = [.. _states.Select((state, k) => filter.ChangeIn(k, state))];
    }

    /// <summary>Logarithms of the shape's parameters.</summary>
    public IReadOnlyList<double> LogShape => _parameters;

    /// <summary>Exponent of the string thickener's dose.</summary>
    public double Exponent { get; }

    /// <summary>What the readings leave of level, k and m now.</summary>
    public WalkState Now => _states[^1];

    /// <inheritdoc/>
    public override double? PeakDose
    {
        get
        {
            Span<double> parameters = stackalloc double[_parameters.Length];
            Shape.Exponentiate(_parameters, parameters);
            return _shape.PeakDose(parameters);
        }
    }

    /// <inheritdoc/>
    public override (double Mean, double Variance) At(double body, double strings)
    {
        var form = PairBodyFilter.Form(strings, Exponent);
        var nearest = _path.Nearest(body, strings);
        var (mean, variance) = _states[nearest].At(form, form * body);
        return (mean + _shape.Rise(_parameters, body),
            variance + PairBodyFilter.Walk(_discrepancy, _path.Distance(nearest, body, strings)));
    }
}
