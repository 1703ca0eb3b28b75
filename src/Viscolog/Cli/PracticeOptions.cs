using System.CommandLine;
using System.Globalization;
using Viscolog.Core.Practice;

namespace Viscolog.Cli;

/// <summary>Which practice pot is meant.</summary>
internal sealed class PracticeOptions
{
    /// <summary>The pot that the demonstration shows when nobody names another: one on which haste and large steps both fail.</summary>
    public const string UsualPot = "slow";

    /// <summary>Its seed.</summary>
    public const int UsualSeed = 3;

    private static readonly string[] Names = [.. PracticeDifficulty.All.Select(d => d.Name)];

    private readonly Option<string> pot = new("--pot") { HelpName = "NAME", Description = $"{string.Join(", ", Names)}; from the easiest to the hardest.", DefaultValueFactory = _ => UsualPot };

    private readonly Option<int> seed = new("--seed")
    {
        HelpName = "N",
        Description = $"The same number gives the same pot, for a whole class; default {UsualSeed}.",
        DefaultValueFactory = _ => UsualSeed,
        CustomParser = result =>
        {
            if (int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= PracticeGame.GreatestSeed)
            {
                return number;
            }

            result.AddError($"--seed: read '{result.Tokens[0].Value}', expected a whole number from 0 to {PracticeGame.GreatestSeed}");
            return 0;
        },
    };

    public void AddTo(Command command)
    {
        pot.AcceptOnlyFromAmong(Names);
        command.Add(pot);
        command.Add(seed);
    }

    public PracticeGame Game(Invocation call) => PracticeGame.Of(PracticeDifficulty.Find(call.Value(pot)!)!, call.Value(seed));
}
