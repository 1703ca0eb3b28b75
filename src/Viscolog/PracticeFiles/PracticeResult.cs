using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Viscolog.Core.Practice;
using Viscolog.Wording;

namespace Viscolog.PracticeFiles;

/// <summary>What is kept of a game that has ended: who played which pot, the moves, and what came of them.</summary>
internal sealed record PracticeResult
{
    /// <summary>The form of the file.</summary>
    public const string Version = "viscolog.practice-game/1";

    public string Schema { get; init; } = Version;

    public required string Player { get; init; }

    /// <summary>The difficulty's name.</summary>
    public required string Pot { get; init; }

    public required int Seed { get; init; }

    public required DateTimeOffset Ended { get; init; }

    public required string Verdict { get; init; }

    public required int Doses { get; init; }

    public required int Readings { get; init; }

    public required int Waits { get; init; }

    public required int EarlyDoses { get; init; }

    public int? OverAtDose { get; init; }

    public required double BodyMpas { get; init; }

    public required double TargetMpas { get; init; }

    public required double PouredG { get; init; }

    public required double WastedG { get; init; }

    public required double BaseG { get; init; }

    public required double BaseToSaveG { get; init; }

    public required double TimeS { get; init; }

    /// <summary>The moves, by which the game can be played again.</summary>
    public required ImmutableArray<string> Moves { get; init; }

    /// <summary>Whether every number is one; a file changed by hand may hold what is too large to be.</summary>
    [JsonIgnore]
    public bool IsFinite => Array.TrueForAll(
        [BodyMpas, TargetMpas, PouredG, WastedG, BaseG, BaseToSaveG, TimeS], double.IsFinite);

    /// <summary>The result of a game.</summary>
    /// <param name="player">Who played.</param>
    /// <param name="path">The game.</param>
    /// <param name="ended">When it ended.</param>
    public static PracticeResult Of(string player, PracticePath path, DateTimeOffset ended)
    {
        var (game, score) = (path.Session.Game, path.Score);
        return new()
        {
            Player = player,
            Pot = game.Difficulty.Name,
            Seed = game.Seed,
            Ended = ended,
            Verdict = PracticeWords.Verdict(score.Verdict),
            Doses = score.Doses,
            Readings = score.Readings,
            Waits = score.Waits,
            EarlyDoses = score.EarlyDoses,
            OverAtDose = score.WentOverAt,
            BodyMpas = Math.Round(score.Body.MilliPascalSeconds, 1),
            TargetMpas = game.Band.Aim.MilliPascalSeconds,
            PouredG = Math.Round(score.Poured.Grams, 4),
            WastedG = Math.Round(score.Wasted.Grams, 2),
            BaseG = Math.Round(score.Base.Grams, 4),
            BaseToSaveG = Math.Round(score.BaseToSave.Grams, 1),
            TimeS = Math.Round(score.Time.TotalSeconds),
            Moves = [.. path.Session.Moves.Select(PracticeMoveText.Of)],
        };
    }
}
