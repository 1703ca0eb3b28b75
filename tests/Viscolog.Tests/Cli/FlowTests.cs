using System.Text;
using System.Text.Json;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The command <c>flow</c>: files, answers, pictures.</summary>
public sealed class FlowTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("lantern-gel-sweep")]
    [InlineData("dusk-glaze-loop")]
    [InlineData("harbour-gel-speeds")]
    public void Samples_are_answered_as_stored(string name)
    {
        var called = Called.With("flow", Sample(name));
        Assert.Equal(0, called.Code);
        ExpectedFile.Check($"cli/flow-{name}.txt", called.Output + called.Error);
    }

    [Fact]
    public void Plain_ASCII_is_plain_ASCII()
    {
        var called = Called.With("flow", Sample("lantern-gel-sweep"), "--ascii");
        called.IsAscii();
        Assert.DoesNotContain('?', called.Output);
    }

    [Fact]
    public void The_answer_in_JSON_has_the_fields_that_scripts_rely_on()
    {
        var root = Parse("flow", Sample("lantern-gel-sweep"), "--json", "--at", "50", "--at", "5000");
        Assert.Equal("viscolog.flow/1", root.GetProperty("schema").GetString());
        Assert.Equal("relative", root.GetProperty("weights").GetString());
        var fits = root.GetProperty("fits");
        Assert.Equal(
            ["bingham", "carreau", "casson", "cross", "herschel-bulkley", "newton", "power-law"],
            fits.EnumerateArray().Select(f => f.GetProperty("model").GetString()!).Order(StringComparer.Ordinal),
            StringComparer.Ordinal);
        var first = fits[0];
        Assert.Equal("herschel-bulkley", first.GetProperty("model").GetString());
        Assert.Equal(
            ["yield_stress_pa", "consistency_pa_sn", "flow_index"],
            first.GetProperty("parameters").EnumerateObject().Select(p => p.Name),
            StringComparer.Ordinal);
        // What the same fit prints as text, cli/flow-lantern-gel-sweep.txt; AICc of 14 points, 3 parameters and the scatter.
        Assert.Equal((11.8, 0.18), Yield(root));
        var rss = first.GetProperty("rss").GetDouble();
        Assert.Equal(0.000999, rss, 0.000001);
        Assert.Equal((14 * Math.Log(rss / 14)) + (2 * 4) + (2.0 * 4 * 5 / (14 - 4 - 1)), first.GetProperty("aicc").GetDouble(), 0.01);
        Assert.Equal(1, first.GetProperty("weight").GetDouble(), 0.0001);
        Assert.Equal([false, true], root.GetProperty("at").EnumerateArray().Select(a => a.GetProperty("outside_data").GetBoolean()));
        Assert.Equal(0, root.GetProperty("warnings").GetArrayLength());
    }

    [Fact]
    public void Weights_change_the_answer_and_are_named()
    {
        var (relative, none) = (
            Parse("flow", Sample("lantern-gel-sweep"), "--json"),
            Parse("flow", Sample("lantern-gel-sweep"), "--json", "--weights", "none"));
        Assert.Equal("none", none.GetProperty("weights").GetString());
        Assert.Equal(((11.8, 0.18), (12.1, 0.44)), (Yield(relative), Yield(none)));
        Assert.Contains(
            "--weights relative counts",
            Called.With("flow", Sample("lantern-gel-sweep"), "--weights", "none").Output,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("p.svg", "<?xml")]
    [InlineData("p.pdf", "%PDF")]
    [InlineData("p.png", "\u0089PNG")]
    public void A_picture_is_written_in_the_format_of_its_ending_and_not_over_another(string name, string begins)
    {
        var path = Path.Combine(_folder, name);
        var called = Called.With("flow", Sample("dusk-glaze-loop"), "--quiet", "-o", path);
        Assert.Equal((0, ""), (called.Code, called.Error));
        var bytes = File.ReadAllBytes(path);
        Assert.StartsWith(begins, Encoding.Latin1.GetString(bytes).TrimStart('\u00ef', '\u00bb', '\u00bf'), StringComparison.Ordinal);
        Assert.Equal(2, Called.With("flow", Sample("dusk-glaze-loop"), "-o", path).Code);
        Assert.Equal(0, Called.With("flow", Sample("dusk-glaze-loop"), "-o", path, "--force").Code);
        Assert.Equal(bytes, File.ReadAllBytes(path));
    }

    [Fact]
    public void The_picture_names_axes_law_and_both_ways()
    {
        var path = Path.Combine(_folder, "p.svg");
        Assert.Equal(0, Called.With("flow", Sample("dusk-glaze-loop"), "-o", path).Code);
        var text = File.ReadAllText(path);
        Assert.All(
            new[] { "Viscosity, Pa·s", "Stress, Pa", "Shear rate, 1/s", "herschel-bulkley", "read on the way up" },
            word => Assert.Contains(word, text, StringComparison.Ordinal));
    }

    [Theory]
    [
        InlineData(
            "shear_rate_1_s,stress_pa\n1,2\n2,3\n4,x\n",
            "line 4, column stress_pa: read 'x', expected a number in Pa, at least 0.000000001"),
    ]
    [
        InlineData(
            "shear_rate_1_s,stress_pa\n1,2\n2,3\n0,3\n",
            "line 4, column shear_rate_1_s: read '0', expected a number in 1/s, at least 0.000000001"),
    ]
    [InlineData("shear_rate_1_s,stress_pa\n1,2\n2,3\n", "read 2 points, expected 3 or more")]
    [InlineData("shear_rate_1_s,stress_pa\n1,2\n2,\n4,5\n", "line 3: read half a point")]
    [InlineData("shear_rate_1_s,stress_pa,viscosity_pas\n1,2,2\n", "one of stress_pa, viscosity_pas and viscosity_mpas")]
    [InlineData("shear_rate_1_s,stress_kpa\n1,2\n", "expected shear_rate_1_s with one of")]
    [InlineData("rpm,torque_pct\n1,2\n2,3\n4,5\n", "# geometry: concentric-cylinder")]
    [
        InlineData(
            "# geometry: vase\nrpm,torque_pct\n1,2\n2,3\n4,5\n",
            "line 1: read 'geometry: vase', expected concentric-cylinder, cone-plate or parallel-plates"),
    ]
    [InlineData("# geometry: cone-plate\n# cone_radius_mm: 20\nrpm,torque_pct\n1,2\n2,3\n4,5\n", "# cone_angle_deg")]
    [
        InlineData(
            "# geometry: concentric-cylinder\n# bob_radius_mm: 20\n# cup_radius_mm: 18\n# bob_length_mm: 40\n# full_scale_mnm: 1\n"
                + "rpm,torque_pct\n1,2\n2,3\n4,5\n",
            "a radius above bob_radius_mm"),
    ]
    [InlineData("# gap_cm: 1\nshear_rate_1_s,stress_pa\n1,2\n2,3\n4,5\n", "gap_mm: give it in that unit")]
    [InlineData("shear_rate_1_s;stress_pa\n1;2,5\n2;3.5\n4;5\n", "decimal comma")]
    [InlineData("", "an empty file")]
    public void Bad_files_are_refused_with_what_is_expected(string text, string said)
    {
        var called = Called.With("flow", Write(text));
        Assert.Equal((2, ""), (called.Code, called.Output));
        Assert.Contains(said, Assert.Single(called.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_and_a_folder_are_refused()
    {
        Assert.Equal(2, Called.With("flow", Path.Combine(_folder, "none.csv")).Code);
        Assert.Equal(2, Called.With("flow", _folder).Code);
    }

    [Fact]
    public void Viscosities_in_either_unit_and_stresses_are_the_same_curve()
    {
        var answers = new[]
        {
            "shear_rate_1_s,stress_pa\n1,20\n10,80\n100,400\n30,170\n3,35\n300,900\n",
            "shear_rate_1_s,viscosity_pas\n1,20\n10,8\n100,4\n30,5.666666666666667\n3,11.666666666666666\n300,3\n",
            "shear_rate_1_s;viscosity_mpas\n1;20000\n10;8000\n100;4000\n30;5666,666666666667\n3;11666,666666666666\n300;3000\n",
        }.Select(t => Called.With("flow", Write(t), "--json", "--force").Output).Distinct(StringComparer.Ordinal);
        Assert.Single(answers);
    }

    [Fact]
    public void The_example_and_every_column_and_key_stand_in_the_description()
    {
        var doc = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "file-formats.md"));
        var section =
            doc[doc.IndexOf("## Flow file", StringComparison.Ordinal)..doc.IndexOf("## Answers in JSON", StringComparison.Ordinal)];
        Assert.Equal(
            (0, ""),
            (
                Called.With("flow", Write(section.Split("```")[1].TrimStart())).Code,
                Called.With("flow", Write(section.Split("```")[1].TrimStart())).Error));
        Assert.All(
            FlowFiles.FlowColumns.All.Keys.Concat(FlowFiles.FlowHeader.Keys),
            name => Assert.Contains($"`{name}`", section, StringComparison.Ordinal));
    }

    private string Write(string text)
    {
        var path = Path.Combine(_folder, "flow.csv");
        File.WriteAllText(path, text);
        return path;
    }

    private static string Sample(string name) => Checkout.Sample(Path.Combine("flow", name + ".csv"));

    private static (double Value, double Error) Yield(JsonElement root)
    {
        var yield = root.GetProperty("fits")[0].GetProperty("parameters").GetProperty("yield_stress_pa");
        return (Math.Round(yield.GetProperty("value").GetDouble(), 1), Math.Round(yield.GetProperty("se").GetDouble(), 2));
    }

    private static JsonElement Parse(params string[] args)
    {
        var called = Called.With(args);
        Assert.Equal(0, called.Code);
        using var document = JsonDocument.Parse(called.Output);
        return document.RootElement.Clone();
    }
}
