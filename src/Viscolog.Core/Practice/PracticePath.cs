using System.Collections.Immutable;
using Viscolog.Core.Advising;

namespace Viscolog.Core.Practice;

/// <summary>A game that has ended, with the truth beside what was read.</summary>
public sealed record PracticePath
{
    private PracticePath(PracticePlayer player, PracticeSession session, ImmutableArray<PracticeStep> steps)
        => (Player, Session, Steps, Score) = (player, session, steps, PracticeScore.Of(session));

    /// <summary>Who played.</summary>
    public PracticePlayer Player { get; }

    /// <summary>The game.</summary>
    public PracticeSession Session { get; }

    /// <summary>Its steps, in order.</summary>
    public ImmutableArray<PracticeStep> Steps { get; }

    /// <summary>What came of it.</summary>
    public PracticeScore Score { get; }

    /// <summary>What was in the pot.</summary>
    public PotTruth Truth => Session.Game.Truth;

    /// <summary>Shows a game that has ended.</summary>
    /// <param name="player">Who played.</param>
    /// <param name="session">The game.</param>
    /// <exception cref="ArgumentException">The game has not ended: the truth stays hidden until then.</exception>
    public static PracticePath Of(PracticePlayer player, PracticeSession session) => Of(player, session, []);

    /// <summary>Shows a game whose moves followed advice, one piece for each reading after the first.</summary>
    internal static PracticePath Of(PracticePlayer player, PracticeSession session, IReadOnlyList<Advice> followed)
    {
        if (!session.HasEnded)
        {
            throw new ArgumentException("the game has not ended", nameof(session));
        }

        var steps = session.Lines.Select((line, i) => new PracticeStep(line)
        {
            IsOver = session.Game.Truth.IsOver(line.Pot.Dose),
            PotTotal = line.Pot.Base + line.Pot.Thickener,
            Advice = i > 0 && i <= followed.Count ? followed[i - 1] : null,
        });
        return new(player, session, [.. steps]);
    }
}
