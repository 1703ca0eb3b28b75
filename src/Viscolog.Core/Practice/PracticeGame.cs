using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>One practice pot to be played: the same difficulty and seed give the same pot, and the same moves the same answers.</summary>
public sealed record PracticeGame
{
    /// <summary>The greatest seed.</summary>
    public const int GreatestSeed = 999_999;

    private PracticeGame(PracticeDifficulty difficulty, int seed, HiddenLaw law, TimeSpan timeConstant, Run start)
    {
        (Difficulty, Seed, Start) = (difficulty, seed, start);
        Pot = new(law, timeConstant, start.Thickeners[0].UsualRange.Top, start.BaseMass);
        Truth = new(Pot, start.Target!.Band);
    }

    /// <summary>The difficulty.</summary>
    public PracticeDifficulty Difficulty { get; }

    /// <summary>The seed.</summary>
    public int Seed { get; }

    /// <summary>What the player is told: base, thickener with its usual range, target, repeatability; no entries.</summary>
    public Run Start { get; }

    /// <summary>The band aimed at.</summary>
    public ViscosityBand Band => Start.Target!.Band;

    /// <summary>The pot as it stands at first.</summary>
    internal HiddenPot Pot { get; }

    /// <summary>What hides in it.</summary>
    internal PotTruth Truth { get; }

    /// <summary>Makes the pot of a difficulty and a seed.</summary>
    /// <param name="difficulty">The difficulty.</param>
    /// <param name="seed">From 0 to <see cref="GreatestSeed"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The seed is out of range.</exception>
    public static PracticeGame Of(PracticeDifficulty difficulty, int seed)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seed);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(seed, GreatestSeed);
        // Seeds next to each other start the generator alike; the first numbers are thrown away.
        var random = new Random((seed * 7) + difficulty.Level);
        for (var i = 0; i < 8; i++)
        {
            random.NextDouble();
        }

        var law = HiddenLaws.Draw(difficulty.Families[random.Next(difficulty.Families.Length)], random);
        var place = law.Useful * Between(random, difficulty.Places);
        var (low, high) = difficulty.TimeConstants;
        var timeConstant = TimeSpan.FromSeconds(Math.Round(low * Math.Pow(high / low, random.NextDouble()), 1));
        // A target as people state one: two digits.
        var aim = Math.Exp(law.LnBody(place));
        var grain = Math.Pow(10, Math.Floor(Math.Log10(aim)) - 1);
        var stated = Math.Round(aim / grain) * grain;
        if (Math.Log(stated) > law.LnBody(law.Useful))
        {
            // Near a peak two digits may ask for more than the pot ever has.
            stated = Math.Floor(aim / grain) * grain;
        }

        var run = new Run(new("practice base"), Mass.FromGrams(200))
        {
            Name = FormattableString.Invariant($"practice pot {difficulty.Name} {seed}"),
            Thickeners = [new Thickener("Pier") { Chemistry = ThickenerChemistry.AlkaliSwellable }],
            Target = new Target.Value(Viscosity.FromMilliPascalSeconds(stated), null),
            Repeatability = difficulty.Repeatability,
        };
        return new(difficulty, seed, law, timeConstant, run);
    }

    private static double Between(Random random, (double Low, double High) bounds)
        => bounds.Low + ((bounds.High - bounds.Low) * random.NextDouble());
}
