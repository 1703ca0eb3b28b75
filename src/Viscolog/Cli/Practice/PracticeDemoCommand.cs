using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Practice;
using Viscolog.Reports;
using Viscolog.Wording;

namespace Viscolog.Cli.Practice;

/// <summary>The demonstration: three players on one pot.</summary>
internal sealed class PracticeDemoCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- practice demo --pot slow --seed 3";

    private readonly PracticeOptions _game = new();
    private readonly Option<bool> _brief = FlagOption.Create("--brief", "Only the outcome.");
    private readonly OutputOptions _output = new($"Write a file as well: {PracticeFile.Endings}.", "file");
    private readonly StepwiseOption _stepwise = new();

    public PracticeDemoCommand()
        : base("demo", "Three players on one pot side by side: one reads too early, one pours 1 % at a time, one does what is "
            + "advised.", Example)
        => Take([.. _game.All, _stepwise.Option, _brief, .. _output.All]);

    protected override ExitCode Run(Invocation call)
    {
        var demonstration = Demonstration.Of(_game.Game(call));
        var players = PracticeWords.Named(demonstration);
        if (call.Json)
        {
            call.Print(PracticeAnswer.Of(players, demonstration.Worst));
        }
        else
        {
            Print(call, demonstration);
        }

        return PracticeText.Write(call, players, _output);
    }

    private void Print(Invocation call, Demonstration demonstration)
    {
        var terminal = call.Terminal;
        PracticeText.Head(terminal, demonstration.Game);
        foreach (var path in demonstration.Paths)
        {
            PracticeText.Named(terminal, PracticeWords.Habit(path.Player), PracticeWords.Name(path.Player));
        }

        if (call.Value(_brief))
        {
            PracticeText.Outcome(terminal, PracticeWords.Named(demonstration));
            return;
        }

        for (var step = 0; step <= demonstration.StepCount; step++)
        {
            PracticeText.Step(terminal, demonstration, step);
            _stepwise.Pause(call);
        }

        PracticeText.Reveal(
            terminal, PracticeWords.Named(demonstration), OverdoseLesson.Of(demonstration.Worst), Say("The player that wasted most"));
    }
}

/// <summary>Which practice pot is meant.</summary>
internal sealed class PracticeOptions
{
    /// <summary>The pot that the demonstration shows when nobody names another: one on which haste and large steps both fail.</summary>
    public const string UsualPot = "slow";

    /// <summary>Its seed.</summary>
    public const int UsualSeed = 3;

    private static readonly string[] Names = [.. PracticeDifficulty.All.Select(d => d.Name)];

    private readonly Option<string> _pot = new("--pot")
    {
        HelpName = "NAME",
        Description = $"{string.Join(", ", Names)}; from the easiest to the hardest.",
        DefaultValueFactory = _ => UsualPot,
    };

    private readonly Option<int> _seed = new("--seed")
    {
        HelpName = "N",
        Description = $"The same number gives the same pot, for a whole class; default {UsualSeed}.",
        DefaultValueFactory = _ => UsualSeed,
        CustomParser = result =>
        {
            if (int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                && number <= PracticeGame.GreatestSeed)
            {
                return number;
            }

            result.AddError($"--seed: read '{result.Tokens[0].Value}', expected a whole number from 0 to {PracticeGame.GreatestSeed}");
            return 0;
        },
    };

    public PracticeOptions() => _pot.AcceptOnlyFromAmong(Names);

    public Option[] All => [_pot, _seed];

    public PracticeGame Game(Invocation call) => PracticeGame.Of(PracticeDifficulty.Find(call.Value(_pot)!)!, call.Value(_seed));
}

/// <summary>Whether to stop after each step.</summary>
internal sealed class StepwiseOption
{
    public Option<bool> Option { get; } = new("--stepwise") { Description = "Stop after each step; Enter continues." };

    public void Pause(Invocation call)
    {
        if (call.Value(Option))
        {
            call.Terminal.Flush();
            call.Note(Say("Enter continues"));
            call.Surroundings.NextLine();
        }
    }
}
