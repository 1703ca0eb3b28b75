namespace Viscolog.Core.Fitting;

/// <summary>How <see cref="LeastSquares"/> goes about a fit.</summary>
public sealed record FitOptions
{
    /// <summary>The usual settings.</summary>
    public static FitOptions Default { get; } = new();

    /// <summary>
    /// Starts besides the given one that are always tried; 0 leaves it to the solver, which tries more only where the first fit gives
    /// reason for doubt.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0.</exception>
    public int ExtraStarts
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value);
            field = value;
        }
    }

    /// <summary>Most evaluations of the residuals, over all starts, those for differenced derivatives not counted; at least 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 1.</exception>
    public int MaximumEvaluations
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1);
            field = value;
        }
    } = 40_000;

    /// <summary>Seed of the moved starts: the same seed gives the same fit.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>
    /// Half widths by which starts are moved up or down, one a parameter, for parameters that are logarithms or may change sign.
    /// Null: every start keeps its sign and is multiplied by up to 10 or 100, up or down, in turn.
    /// </summary>
    public IReadOnlyList<double>? StartWidths { get; init; }
}
