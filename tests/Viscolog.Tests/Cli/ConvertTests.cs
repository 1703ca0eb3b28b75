using System.Text.Json;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The command <c>convert</c>: the contract of its JSON, its texts, what it refuses.</summary>
public sealed class ConvertTests
{
    [Fact]
    public void The_answer_in_JSON_has_the_fields_that_scripts_rely_on()
    {
        var root = Parse("--method", "iso-2431-4", "60");
        Assert.Equal("viscolog.convert/1", root.GetProperty("schema").GetString());
        Assert.Equal("iso-2431-4", root.GetProperty("method").GetString());
        Assert.Equal(60, root.GetProperty("value").GetDouble());
        Assert.Equal("s", root.GetProperty("unit").GetString());
        Assert.Equal(78.87, root.GetProperty("kinematic_mm2_s").GetDouble());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("dynamic_mpas").ValueKind);
        Assert.Equal(0, root.GetProperty("warnings").GetArrayLength());
        Assert.Contains("ISO 2431", root.GetProperty("source").GetString(), StringComparison.Ordinal);
        Assert.Equal(265.3, root.GetProperty("shear_rate_1_s").GetDouble());
    }

    [Theory]
    [InlineData("dynamic_mpas", 86.75, "--method", "iso-2431-4", "60", "--density", "1.1")]
    [InlineData("dynamic_mpas", 1000, "--method", "krebs", "85")]
    [InlineData("dynamic_mpas", 8200, "--method", "rotational", "--factor", "200", "--torque", "41")]
    [InlineData("dynamic_mpas", 8200, "--method", "rotational", "41", "--factor", "200", "--rpm", "20")]
    [
        InlineData(
            "dynamic_mpas",
            35280,
            "--method",
            "falling-ball",
            "120",
            "--ball",
            "3",
            "--ball-density",
            "7.8",
            "--fall",
            "100",
            "--jar",
            "60",
            "--density",
            "1.1"),
    ]
    [InlineData("yield_stress_pa", 109.8, "--method", "slump", "50", "--height", "100", "--density", "1.2")]
    public void Every_kind_of_method_converts(string field, double expected, params string[] args)
        => Assert.Equal(expected, Parse(args).GetProperty(field).GetDouble(), expected * 2e-3);

    [Fact]
    public void A_value_is_brought_to_the_reference_temperature_with_a_larger_uncertainty()
    {
        var root = Parse("--method", "iso-2431-4", "60", "--density", "1", "--temp", "26", "--reference", "23");
        var at = root.GetProperty("at_reference");
        Assert.Equal(78.87 * Math.Exp(2000 * ((1 / 296.15) - (1 / 299.15))), at.GetProperty("dynamic_mpas").GetDouble(), 0.05);
        Assert.True(at.GetProperty("uncertainty_pct").GetDouble() > root.GetProperty("uncertainty_pct").GetDouble());
    }

    [Theory]
    [InlineData("convert-cup", "--method", "iso-2431-4", "95", "--density", "1.1", "--temp", "26")]
    [InlineData("convert-torque", "--method", "rotational", "--factor", "200", "--torque", "6", "--rpm", "10")]
    [InlineData("convert-slump", "--method", "slump", "50", "--height", "100", "--density", "1.1")]
    [InlineData("convert-krebs", "--method", "krebs", "104")]
    public void Texts_are_as_stored(string name, params string[] args)
    {
        var called = Called.With(["convert", .. args]);
        Assert.Equal(0, called.Code);
        ExpectedFile.Check($"cli/{name}.txt", called.Output + called.Error);
    }

    [Theory]
    [InlineData("iso-2431-6", "--method", "iso-2431-4", "200")]
    [InlineData("expected s", "--method", "iso-2431-4", "60 mm")]
    [InlineData("above 0", "--method", "iso-2431-4", "-60")]
    [InlineData("above 0", "--method", "krebs")]
    [InlineData("--factor", "--method", "rotational", "41")]
    [InlineData("--density", "--method", "slump", "50", "--height", "100")]
    [InlineData("too fast", "--method", "falling-ball", "1", "--ball", "3", "--ball-density", "7.8", "--fall", "100", "--density", "1")]
    [InlineData("a guess", "--method", "iso-2431-4", "60", "--temp", "40")]
    [InlineData("needs --density", "12", "--from", "mL", "--to", "g")]
    [InlineData("don't measure", "12", "--from", "mL", "--to", "cP")]
    [InlineData("expected a unit", "12", "--from", "stone", "--to", "g")]
    [InlineData("expected a number", "12,5,0", "--from", "mL", "--to", "mL")]
    [InlineData("expected a number", "1e40", "--from", "mL", "--to", "mL")]
    [InlineData("0 or more", "--from", "g", "--to", "g", "--", "-3")]
    public void What_can_not_be_converted_is_refused_with_what_to_do(string said, params string[] args)
    {
        var called = Called.With(["convert", .. args]);
        Assert.Equal((2, ""), (called.Code, called.Output));
        Assert.Contains(said, Assert.Single(called.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("convert", "60")]
    [InlineData("convert", "60", "--method", "iso-2431-9")]
    [InlineData("convert", "60", "--method", "iso-2431-4", "--density", "heavy")]
    [InlineData("convert", "60", "--method", "iso-2431-4", "--from", "mL", "--to", "g")]
    public void A_wrong_call_ends_with_1(params string[] args) => Assert.Equal(1, Called.With(args).Code);

    [Theory]
    [InlineData("850 cP = 0.85 Pa·s\n", "850", "--from", "cP", "--to", "Pas")]
    [InlineData("73.4 °F = 23 °C\n", "73.4", "--from", "F", "--to", "C")]
    [InlineData("12.5 mL = 13.5 g\n", "12.5", "--from", "mL", "--to", "g", "--density", "1.08")]
    public void A_value_goes_to_another_unit(string output, params string[] args)
        => Assert.Equal((0, output), (Called.With(["convert", .. args]).Code, Called.With(["convert", .. args]).Output));

    private static JsonElement Parse(params string[] args)
    {
        var called = Called.With(["convert", .. args, "--json"]);
        Assert.Equal((0, ""), (called.Code, called.Error));
        using var document = JsonDocument.Parse(called.Output);
        return document.RootElement.Clone();
    }
}
