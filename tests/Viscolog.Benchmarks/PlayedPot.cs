namespace Viscolog.Benchmarks;

/// <summary>What came of one pot.</summary>
internal sealed record PlayedPot(string Family, bool InBand, bool Over, double Grams, Played Played)
{
    public bool Short => !InBand && !Over;
}
