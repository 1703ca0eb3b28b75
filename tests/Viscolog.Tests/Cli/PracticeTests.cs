using System.Text.Json;
using Viscolog.Core.Practice;
using Viscolog.PracticeFiles;
using Viscolog.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>Practice on the command line.</summary>
public sealed class PracticeTests : IDisposable
{
    private static readonly string[] Game =
    [
        "practice",
        "play",
        "--pot",
        "easy",
        "--seed",
        "7",
        "read",
        "dose=2",
        "stir=10",
        "wait=60",
        "read",
        "dose=4",
        "stir=10",
        "wait=60",
        "read",
        "end",
    ];

    private readonly TemporaryFolder _folder = new();

    private string Log => _folder.Of("log");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("practice-demo-brief", "practice", "demo", "--pot", "slow", "--seed", "3", "--brief")]
    [InlineData("practice-demo-peaked", "practice", "demo", "--pot", "peaked", "--seed", "2")]
    [InlineData("practice-demo-ascii", "practice", "demo", "--pot", "slow", "--seed", "3", "--ascii")]
    public void The_demonstration_is_as_stored(string name, params string[] call)
    {
        var called = Called.With(call);
        Assert.Equal((0, ""), (called.Code, called.Error));
        ExpectedFile.Check($"cli/{name}.txt", called.Output);
        Assert.All(called.Output.Split('\n').Where(l => !l.Contains('│', StringComparison.Ordinal)), l => Assert.True(l.Length <= 80, l));
        if (call.Contains("--ascii"))
        {
            called.IsAscii();
        }
    }

    [Fact]
    public void A_replay_is_as_stored()
        => ExpectedFile.Check(
            "cli/practice-replay-harbour.txt", Called.With("practice", "replay", Checkout.Sample("harbour-gel-02-over.csv")).Output);

    [Fact]
    public void A_game_shows_nothing_before_its_end_and_all_after_it()
    {
        var going = Called.In(Log, Game[..^1]);
        Assert.Equal(0, going.Code);
        Assert.DoesNotContain("steady", going.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("advised", going.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("needs", going.Output, StringComparison.Ordinal);
        var ended = Called.In(Log, Game);
        Assert.Contains("Hidden curve: 'steady'; the target needs 1.75 %", ended.Output, StringComparison.Ordinal);
        Assert.Contains("Dose 2 took the pot over, to 3.00 %", ended.Output, StringComparison.Ordinal);
        Assert.Contains("advised  in band", ended.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Scores_are_kept_beside_the_log_and_the_log_stays_as_it_was()
    {
        Assert.Equal(0, Called.In(Log, "import", Checkout.Sample("lantern-gel-06.csv")).Code);
        var before = Directory.GetFiles(Log).ToDictionary(f => f, f => Convert.ToHexString(File.ReadAllBytes(f)), StringComparer.Ordinal);
        Assert.Equal(0, Called.In(Log, [.. Game, "--player=@B, \"the second\""]).Code);
        Assert.Equal(0, Called.In(Log, "practice", "demo", "--brief").Code);
        Assert.Equal(0, Called.In(Log, "practice", "scores").Code);
        Assert.Equal(
            before, Directory.GetFiles(Log).ToDictionary(f => f, f => Convert.ToHexString(File.ReadAllBytes(f)), StringComparer.Ordinal));
        Assert.Single(JsonDocument.Parse(Called.In(Log, "runs", "--json").Output).RootElement.GetProperty("runs").EnumerateArray());
        Assert.Equal(["log", "log-practice"], _folder.Names);
    }

    [Fact]
    public void The_sheet_is_safe_in_a_spreadsheet_and_tells_what_advice_came_to()
    {
        string[] names = ["Player A", "=1+1", "@B, \"the second\"", "-3", "+4"];
        Assert.Equal(0, Called.In(Log, [.. Game, "--player=" + names[0]]).Code);
        var scores = new PracticeScores(Log + "-practice");
        var first = Assert.Single(scores.All().Results);
        Assert.All(
            names[1..].Index(),
            n => Assert.Null(scores.Save(first with { Player = n.Item, Ended = first.Ended.AddSeconds(1 + n.Index) })));
        var lines = Called.In(Log, "practice", "scores").Output.TrimEnd().Split('\n');
        Assert.StartsWith(
            "player,pot,seed,ended,verdict,doses,readings,waits,early_doses,over_at_dose,body_mpas,target_mpas,poured_g,wasted_g,",
            lines[0],
            StringComparison.Ordinal);
        Assert.Equal(names.Length, lines.Length - 1);
        Assert.StartsWith("Player A,easy,7,", lines[1], StringComparison.Ordinal);
        Assert.Contains(",over,2,3,0,0,2,", lines[1], StringComparison.Ordinal);
        Assert.Contains(",in band,", lines[1], StringComparison.Ordinal);
        Assert.All(lines.Skip(2), l => Assert.True(l.StartsWith('\'') || l.StartsWith("\"'", StringComparison.Ordinal), l));
        var file = _folder.Of("scores.csv");
        Assert.Equal(0, Called.In(Log, "practice", "scores", "-o", file).Code);
        Assert.Equal(string.Join('\n', lines) + "\n", File.ReadAllText(file));
        Assert.Equal(2, Called.In(Log, "practice", "scores", "-o", file).Code);
        var games = JsonDocument.Parse(Called.In(Log, "practice", "scores", "--json").Output).RootElement;
        Assert.Equal("viscolog.practice-scores/1", games.GetProperty("schema").GetString());
        Assert.Equal(
            names, games.GetProperty("games").EnumerateArray().Select(g => g.GetProperty("player").GetString()), StringComparer.Ordinal);
    }

    [Fact]
    public void A_kept_game_can_be_played_again_from_its_file()
    {
        Called.In(Log, [.. Game, "--player", "Player A"]);
        var (results, warnings) = new PracticeScores(Log + "-practice").All();
        Assert.Empty(warnings);
        var kept = Assert.Single(results);
        var moves = kept.Moves.Select(m => PracticeMoveText.Read(m, out _)!);
        var again = PracticeSession.Of(PracticeGame.Of(PracticeDifficulty.Find(kept.Pot)!, kept.Seed)).Take(moves).Session;
        var result = PracticeResult.Of("Player A", PracticePath.Of(PracticePlayer.Person, again), kept.Ended);
        Assert.Equal(kept with { Moves = [] }, result with { Moves = [] });
        Assert.Equal(kept.Moves, result.Moves);
    }

    [Fact]
    public void A_damaged_game_is_left_out_and_named()
    {
        Called.In(Log, [.. Game, "--player", "Player A"]);
        var games = Path.Combine(Log + "-practice", "games");
        File.WriteAllText(Path.Combine(games, "torn.json"), "{\"schema\": \"viscolog.prac");
        File.WriteAllText(Path.Combine(games, "other.json"), "{\"schema\": \"other/1\"}");
        var called = Called.In(Log, "practice", "scores");
        Assert.Equal((0, 2), (called.Code, called.Output.TrimEnd().Split('\n').Length));
        Assert.Contains("torn.json: left out", called.Error, StringComparison.Ordinal);
        Assert.Contains("other.json: left out", called.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "Must be one of", "practice", "demo", "--pot", "nice")]
    [InlineData(1, "expected a whole number from 0 to 999999", "practice", "demo", "--seed", "-1")]
    [InlineData(1, "(see viscolog practice demo --help)", "practice", "demo", "--seed", "1.5")]
    [InlineData(1, "the practice screen needs a terminal", "practice")]
    [InlineData(2, "move 2: read 'dose=2g'", "practice", "play", "read", "dose=2g")]
    [InlineData(2, "move 2, read: stir it in first", "practice", "play", "dose=2", "read")]
    [InlineData(2, "move 1: read 'dose=1e3'", "practice", "play", "dose=1e3")]
    [InlineData(2, "the file's ending decides the format", "practice", "demo", "--brief", "-o", "demo.docx")]
    [InlineData(2, "put 'end' last", "practice", "play", "read", "--json")]
    [InlineData(2, "nowhere.csv", "practice", "replay", "nowhere.csv")]
    public void Wrong_calls_are_told_what_is_expected(int code, string message, params string[] call)
    {
        var called = Called.With(call);
        Assert.Equal(code, called.Code);
        Assert.Contains(message, called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_replay_of_a_long_run_says_how_many_readings_it_judges()
    {
        var file = _folder.Of("long.csv");
        File.WriteAllText(file, "# base_g: 120\n# thickener: TA\n# target_mpas: 9000\nthickener,added_g,wait_s,viscosity_mpas\n,0,60,850\n"
            + string.Concat(Enumerable.Range(1, 599).Select(i => FormattableString.Invariant($"TA,0.005,60,{850 + i}\n"))));
        var called = Called.With("practice", "replay", file, "--json");
        var root = JsonDocument.Parse(called.Output).RootElement;
        Assert.Contains(
            "8 of 600 readings are judged", root.GetProperty("warnings").EnumerateArray().Last().GetString(), StringComparison.Ordinal);
        var readings = root.GetProperty("readings").EnumerateArray().ToList();
        Assert.Equal((600, 8), (readings.Count, readings.Count(r => r.TryGetProperty("advice", out _))));
        Assert.Equal(592, readings.Count(r => r.TryGetProperty("no_advice", out var why) && why.GetString() == "Not judged."));
    }

    [Fact]
    public void Json_is_one_object_and_says_the_same()
    {
        var file = _folder.Of("demo.svg");
        var called = Called.With("practice", "demo", "--pot", "peaked", "--seed", "2", "--json", "-o", file);
        var root = JsonDocument.Parse(called.Output).RootElement;
        Assert.Equal("viscolog.practice/1", root.GetProperty("schema").GetString());
        Assert.Equal(
            ["over", "over", "in band"],
            root.GetProperty("players").EnumerateArray().Select(p => p.GetProperty("verdict").GetString()),
            StringComparer.Ordinal);
        Assert.Equal("rise-and-fall", root.GetProperty("hidden").GetProperty("family").GetString());
        Assert.True(File.Exists(file));
        var replay = JsonDocument.Parse(
            Called.With("practice", "replay", Checkout.Sample("harbour-gel-02-over.csv"), "--json").Output).RootElement;
        Assert.Equal(
            ["more", "dosed-against-advice", "otherwise", null],
            replay.GetProperty("readings").EnumerateArray().Select(r => r.TryGetProperty("compared", out var c) ? c.GetString() : null),
            StringComparer.Ordinal);
    }

    [Fact]
    public void Stepwise_stops_after_each_step_and_goes_on_at_the_end_of_input()
        => Assert.Equal(6 + 3, Called.With("practice", "demo", "--pot", "easy", "--seed", "7", "--stepwise").Error.Split("Enter "
            + "continues").Length + 1);

    [Fact]
    public void A_handout_is_one_escaped_page_that_needs_nothing_else()
    {
        var file = _folder.Of("handout.html");
        Assert.Equal(0, Called.In(Log, [.. Game, "--player", "<script>alert(1)</script> & co", "-o", file]).Code);
        var html = File.ReadAllText(file);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; co", html, StringComparison.Ordinal);
        Assert.Contains("<svg", html, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", html.Replace("http://www.w3.org/", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("Why over-dosing is a dead end", html, StringComparison.Ordinal);
        Assert.Contains("Letting down costs base", html, StringComparison.Ordinal);
    }
}
