using System.Globalization;
using Viscolog.Core.Practice;
using Viscolog.Tables;
using Viscolog.Wording;

namespace Viscolog.PracticeFiles;

/// <summary>
/// A class's scores as a CSV file for spreadsheets: UTF-8, LF, commas, decimal points; a text that a spreadsheet would take for a formula
/// gets a mark before it. Beside each game stands what the program's own advice came to on the same pot.
/// </summary>
internal static class PracticeSheet
{
    private static readonly string[] Columns =
    [
        "player", "pot", "seed", "ended", "verdict", "doses", "readings", "waits", "early_doses", "over_at_dose", "body_mpas",
        "target_mpas", "poured_g", "wasted_g", "base_added_g", "base_to_save_g", "time_s", "advised_verdict", "advised_doses",
        "advised_waits", "advised_wasted_g",
    ];

    /// <summary>Writes the sheet; the stream stays open.</summary>
    public static void Write(IEnumerable<PracticeResult> results, Stream stream)
    {
        using var writer = TableWriter.Create(stream, spreadsheetSafe: true, hasHeader: false);
        TableWriter.Names(writer, Columns);
        var advised = new Dictionary<(string, int), PracticeScore?>();
        foreach (var result in results)
        {
            var key = (result.Pot, result.Seed);
            if (!advised.TryGetValue(key, out var score))
            {
                advised[key] = score = Advised(result);
            }

            TableWriter.Row(writer, Cells(result, score));
        }
    }

    /// <summary>
    /// What advice came to on the pot; null where a later version of the program made it, or a hand that changed the file.
    /// </summary>
    private static PracticeScore? Advised(PracticeResult result)
        => PracticeDifficulty.Find(result.Pot) is { } difficulty && result.Seed is >= 0 and <= PracticeGame.GreatestSeed
            ? PracticePlayers.Advised(PracticeGame.Of(difficulty, result.Seed)).Score
            : null;

    private static IEnumerable<string> Cells(PracticeResult r, PracticeScore? advised) =>
    [
        r.Player, r.Pot, Text(r.Seed), r.Ended.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture), r.Verdict, Text(r.Doses),
        Text(r.Readings), Text(r.Waits), Text(r.EarlyDoses), r.OverAtDose is { } over ? Text(over) : "", Text(r.BodyMpas),
        Text(r.TargetMpas), Text(r.PouredG), Text(r.WastedG), Text(r.BaseG), Text(r.BaseToSaveG), Text(r.TimeS),
        advised is null ? "" : PracticeWords.Verdict(advised.Verdict), Text(advised?.Doses), Text(advised?.Waits),
        advised is null ? "" : Text(Math.Round(advised.Wasted.Grams, 2)),
    ];

    private static string Text(double? value) => value?.ToString("0.####", CultureInfo.InvariantCulture) ?? "";
}
