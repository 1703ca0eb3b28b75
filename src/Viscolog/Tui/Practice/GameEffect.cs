using Viscolog.Core.Practice;
using Viscolog.PracticeFiles;
using Viscolog.Store;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Practice;

/// <summary>What a practice game alone asks the world to do. The set of cases is closed.</summary>
internal abstract record GameEffect : IEffect<GameEvent>
{
    private GameEffect()
    {
    }

    public abstract void Perform(IStage<GameEvent> stage);

    /// <summary>Work the advised way out on the same pot.</summary>
    internal sealed record Compare(PracticeGame Game) : GameEffect
    {
        public override void Perform(IStage<GameEvent> stage)
            => stage.Work(
                Say("advised way"), () => new GameEvent.Compared(PracticePlayers.Advised(Game)), fault => new GameEvent.Kept(fault));
    }

    /// <summary>Keep the score.</summary>
    internal sealed record Keep(string Player, PracticePath Path) : GameEffect
    {
        public override void Perform(IStage<GameEvent> stage)
        {
            var fault = new PracticeScores(stage.Context.Log.Place.Folder).Save(PracticeResult.Of(Player, Path, stage.Context.Now));
            stage.Send(new GameEvent.Kept(fault ?? Say($"score kept under {Player}")));
        }
    }
}
