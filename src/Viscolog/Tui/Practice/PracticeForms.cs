using System.Globalization;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Tables;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>The forms of the practice screens.</summary>
internal static class PracticeForms
{
    public static Form<PracticeEvent> Player(PracticeState state) => new(
        Say("Player and pot"),
        Say("Scores are kept under the player's name, beside the log and never in it. The same seed gives the same pot, for a whole "
            + "class."),
        [
            new(Say("player"), state.Player, Say("empty: keep no score")),
            new(Say("seed"), state.Seed.ToString(CultureInfo.InvariantCulture), Say($"0 to {PracticeGame.GreatestSeed}")),
        ],
        texts => int.TryParse(texts[1].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var seed)
            && seed <= PracticeGame.GreatestSeed
            ? FormAnswer<PracticeEvent>.Of(new PracticeEvent.Typed(PracticeWords.PlayerName(texts[0]), seed))
            : FormAnswer<PracticeEvent>.Wrong(1, Say($"a whole number from 0 to {PracticeGame.GreatestSeed}")));

    public static Form<GameEvent> LetDown() => new(
        Say("Let down with base"),
        Say("Base brings the dose back down; an addition can't be taken out again."),
        [new(Say("base in"), "", "g")],
        texts => TypedNumber.Read(texts[0], NumberRange.GramsPresent, out var error) is { } grams
            ? FormAnswer<GameEvent>.Of(new GameEvent.LetDown(Mass.FromGrams(grams)))
            : FormAnswer<GameEvent>.Wrong(0, error!));
}
