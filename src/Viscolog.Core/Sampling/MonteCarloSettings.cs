namespace Viscolog.Core.Sampling;

/// <summary>The numbers that steer the Monte Carlo; one place, version 1.</summary>
internal static class MonteCarloSettings
{
    /// <summary>Draws that the finished posterior keeps.</summary>
    public const int Draws = 500;

    /// <summary>Factor on the covariance of the weighted draws in the next round's proposal.</summary>
    public const double Widening = 1.6;

    /// <summary>One draw in so many comes from the prior itself, so that no region is ever out of reach.</summary>
    public const int PriorEvery = 10;
}
