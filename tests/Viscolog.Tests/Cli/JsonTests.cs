using System.Text.Json;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The JSON that scripts rely on: names, presence and absence of fields.</summary>
public sealed class JsonTests
{
    private static readonly string[] Always =
    [
        "schema", "run", "action", "thickener", "dose_now_pct", "share_now_pct", "now_mpas", "chance_in_band_pct", "chance_over_pct",
        "chance_over_words", "dose_limit", "why", "warnings", "cautions",
    ];

    [Theory]
    [InlineData("lantern-gel-07", "add", "add_g", "add_pct", "dose_after_pct", "wait_s", "expected_mpas")]
    [InlineData("lantern-gel-08-read-early", "wait", "wait_s")]
    [InlineData("lantern-gel-06", "stop")]
    [InlineData("harbour-gel-02-over", "let-down", "let_down_g", "dose_after_pct", "expected_mpas")]
    [InlineData("dusk-glaze-05-flattening", "give-up")]
    public void Advice_has_the_fields_of_its_action_and_no_others(string name, string action, params string[] fields)
    {
        var root = Parse("advise", Checkout.Sample(name + ".csv"), "--json");
        Assert.Equal("viscolog.advice/1", root.GetProperty("schema").GetString());
        Assert.Equal(action, root.GetProperty("action").GetString());
        Assert.Equal(
            Always.Concat(fields).Order(StringComparer.Ordinal), root.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_if_is_answered_beside_the_advice()
    {
        var plain = Parse("advise", Checkout.Sample("lantern-gel-07.csv"), "--json");
        var small = Parse("advise", Checkout.Sample("lantern-gel-07.csv"), "--json", "--what-if", "0.5").GetProperty("what_if");
        var root = Parse("advise", Checkout.Sample("lantern-gel-07.csv"), "--json", "--what-if", "5");
        var large = root.GetProperty("what_if");
        Assert.Equal(plain.GetProperty("add_g").GetDouble(), root.GetProperty("add_g").GetDouble());
        Assert.Equal(5, large.GetProperty("add_g").GetDouble());
        Assert.True(small.GetProperty("chance_over_pct").GetDouble() < large.GetProperty("chance_over_pct").GetDouble());
        Assert.True(
            small.GetProperty("expected_mpas").GetProperty("median").GetDouble() < large.GetProperty("expected_mpas").GetProperty("median")
                .GetDouble());
        Assert.Contains("advice stays within", large.GetProperty("notes")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_if_far_beyond_the_range_is_refused()
    {
        var called = Called.With("advise", Checkout.Sample("lantern-gel-07.csv"), "--what-if", "500");
        Assert.Equal(2, called.Code);
        Assert.Contains("there is no forecast", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_estimate_has_median_ends_and_level()
    {
        var expected = Parse("advise", Checkout.Sample("lantern-gel-07.csv"), "--json").GetProperty("expected_mpas");
        double Number(string field) => expected.GetProperty(field).GetDouble();
        Assert.True(Number("low") < Number("median"));
        Assert.True(Number("median") < Number("high"));
        Assert.Equal(90, Number("level_pct"));
    }

    [Fact]
    public void Fit_answers_for_doses_and_target()
    {
        var root = Parse("fit", Checkout.Sample("lantern-gel-07.csv"), "--json", "--at", "1.2", "--at", "2.5");
        Assert.Equal("viscolog.fit/1", root.GetProperty("schema").GetString());
        Assert.Equal([1.2, 2.5], root.GetProperty("at").EnumerateArray().Select(a => a.GetProperty("dose_pct").GetDouble()));
        Assert.Equal(1, root.GetProperty("shapes").EnumerateArray().Sum(s => s.GetProperty("weight").GetDouble()), 0.001);
        // What the same fit prints as text, cli/fit-lantern-gel-07.txt: 2.63 % (2.43 % to 3.27 %), test 4.40 % next, base 835 ± 38.9 mPa·s.
        var dose = root.GetProperty("dose_for_target");
        string[] ends = ["median_pct", "low_pct", "high_pct"];
        Assert.Equal([2.63, 2.43, 3.27], ends.Select(f => Math.Round(dose.GetProperty(f).GetDouble(), 2)));
        Assert.Equal(4.4, root.GetProperty("test_next").GetProperty("dose_pct").GetDouble(), 0.005);
        var pot = root.GetProperty("shapes")[0].GetProperty("parameters").GetProperty("base");
        Assert.Equal((835.0, 39.0), (Math.Round(pot.GetProperty("value").GetDouble()), Math.Round(pot.GetProperty("se").GetDouble())));
    }

    private static JsonElement Parse(params string[] args)
    {
        var called = Called.With(args);
        Assert.Equal((0, ""), (called.Code, called.Error));
        using var document = JsonDocument.Parse(called.Output);
        return document.RootElement.Clone();
    }
}
