using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Store;
using Viscolog.Tests.Support;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.RunHeaders;

namespace Viscolog.Tests.Tui;

/// <summary>What a run says of itself, typed and corrected.</summary>
public sealed class RunFormTests
{
    /// <summary>The texts of a form, some of them typed over.</summary>
    internal static string[] Typed<T>(Form<T> form, params (string Field, string Text)[] typed)
        where T : class
    {
        var texts = form.Fields.Select(f => f.Text).ToArray();
        foreach (var (field, text) in typed)
        {
            var place = form.Fields.Select(f => f.Label).ToList().IndexOf(field);
            Assert.True(place >= 0, field);
            texts[place] = text;
        }

        return texts;
    }

    [Fact]
    public void A_pair_of_thickeners_with_a_string_is_begun()
    {
        var form = RunForm.New([], null);
        var answer = form.Read(Typed(
            form,
            ("name", "Thread gel 9"),
            ("base", "Quay base"),
            ("base in the pot", "1,5 kg"),
            ("thickener", "body one"),
            ("usual range", "0,2-1"),
            ("second thickener", "string one"),
            ("its usual range", "0.5-2"),
            ("target", "9 000"),
            ("tolerance", "12"),
            ("string from-to", "30-45"),
            ("chemistry", "cellulosic"),
            ("second's chemistry", "associative"),
            ("product", "Thread gel"),
            ("lot", "7"),
            ("reads at", "73.4 F")));
        Assert.Null(answer.Error);
        var run = answer.Value!.Run;
        Assert.Equal(
            (1500.0, 9000.0, "Thread gel", "7"), (run.BaseMass.Grams, run.Target!.Band.Aim.MilliPascalSeconds, run.Product, run.Lot));
        Assert.Equal((30.0, 45.0), (run.TargetString!.Low.Millimeters, run.TargetString.High.Millimeters));
        Assert.Equal(23, run.ReferenceTemperatureInForce.Celsius, 9);
        Assert.Equal([ThickenerChemistry.Cellulosic, ThickenerChemistry.Associative], run.Thickeners.Select(t => t.Chemistry));
        Assert.Equal([(0.2, 1.0), (0.5, 2.0)], run.Thickeners.Select(t => (t.UsualRange.Low.Percent, t.UsualRange.Top.Percent)));
        Assert.True(PairRoles.Apply(run));
    }

    [Theory]
    [InlineData("base in the pot", "heavy", "read 'heavy', expected a number in g")]
    [InlineData("base", "", "the name of the base")]
    [InlineData("thickener", "a=b", "a name without")]
    [InlineData("usual range", "5-1", "expected")]
    [InlineData("target", "9000 g", "read the unit 'g'")]
    [InlineData("tolerance", "x", "read 'x'")]
    [InlineData("method", "by-eye", "by-eye")]
    [InlineData("string from-to", "40-20", "expected")]
    [InlineData("chemistry", "magic", "one of ")]
    [InlineData("reads at", "-400", "read '-400'")]
    public void What_is_wrong_is_said_at_its_field(string field, string text, string said)
    {
        var form = RunForm.New([], null);
        var answer = form.Read(Typed(
            form, ("base", "Quay base"), ("base in the pot", "100"), ("thickener", "TA"), ("target", "900"), (field, text)));
        Assert.Contains(said, answer.Error, StringComparison.Ordinal);
        Assert.Equal(field, form.Fields[answer.Field].Label);
    }

    [Theory]
    [InlineData("krebs", "92 KU", 92.0)]
    [InlineData("krebs", "92KU", 92.0)]
    [InlineData("iso-2431-4", "38 s", 38.0)]
    [InlineData("krebs", "900", null)]
    [InlineData("direct", "0.9 Pa.s", null)]
    public void A_target_may_be_typed_as_the_method_shows_it(string method, string target, double? shown)
    {
        var run = FileText.Read(
            $"# base: Quay base\n# base_g: 120\n# base_density_g_ml: 1.1\n# thickener: TA\n# method: {method}\nadded_g\n");
        var form = RunForm.Of([], run);
        var answer = form.Read(Typed(form, ("target", target)));
        Assert.Null(answer.Error);
        var scale = run.Run.MethodInForce.Scales[0];
        var expected = shown is { } value
            ? (
                (Conversion.Converted)Conversions.ToBody(
                    run.Run.MethodInForce,
                    scale.Make(value),
                    run.Run.Setup,
                    run.Run.Base.Density)).Reading.Body!.Value.MilliPascalSeconds
            : 900;
        Assert.Equal(expected, answer.Value!.Run.Target!.Band.Aim.MilliPascalSeconds, 9);
    }

    [Fact]
    public void Nothing_corrected_says_the_same_of_every_sample()
    {
        foreach (var path in Directory.GetFiles(Path.Combine(Checkout.Root, "sample-runs"), "*.csv", SearchOption.TopDirectoryOnly))
        {
            var file = FileText.Read(File.ReadAllText(path));
            var form = RunForm.Of([], file);
            if (form.Fields[1].Text.Length == 0)
            {
                continue;
            }

            var answer = form.Read(Typed(form));
            Assert.True(answer.Error is null, $"{path}: {answer.Error}");
            var (before, after) = (
                HeaderText.Of(file.WithoutRows()).Order(StringComparer.Ordinal),
                HeaderText.Of(answer.Value!).Order(StringComparer.Ordinal));
            var changed = after.Except(before, StringComparer.Ordinal).Concat(before.Except(after, StringComparer.Ordinal));
            // The method and a tolerance, which a file may leave unsaid, are stated.
            Assert.DoesNotContain(changed, l => !l.StartsWith("method", StringComparison.Ordinal)
                && !l.StartsWith("tolerance", StringComparison.Ordinal)
                && !l.StartsWith("thickener", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_the_form_does_not_show_stays()
    {
        var file = FileText.Read("# base: Quay base\n# base_g: 120\n# note: by hand\n# shelf: 4\n# scale_step_g: 0.01\n"
            + "# thickener: TA; active_pct=30; lot=9\nadded_g,ph\n0.5,9\n");
        var form = RunForm.Of([], file);
        var header = form.Read(Typed(form, ("name", "another"), ("base in the pot", "125"))).Value!;
        Assert.Equal(
            ("another", 125.0, "by hand", 0.01),
            (header.Run.Name, header.Run.BaseMass.Grams, header.Run.Note, header.Run.ScaleStep!.Value.Grams));
        Assert.Equal(30, header.Run.Thickeners[0].Active!.Value.Percent);
        Assert.Contains(HeaderText.Of(header), l => l == "shelf: 4");
        Assert.Contains(HeaderText.Of(header), l => l.Contains("lot=9", StringComparison.Ordinal));
        Assert.Empty(header.Run.Entries);
    }

    /// <summary>A name that was misspelt is put right after the thickener was added; the rows keep what was said.</summary>
    [Fact]
    public void A_thickener_that_was_added_gets_another_name_and_the_advice_stays()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        var text = File.ReadAllText(Checkout.Sample("lantern-gel-07.csv"));
        log.Import(FileText.Read(text), CancellationToken.None);
        var before = log.Run(1)!.File;
        Rename("Sail two");
        var after = log.Run(1)!.File;
        var thickener = Assert.Single(after.Run.Thickeners);
        Assert.Equal(("Sail two", "Sail"), (thickener.Name, Assert.Single(thickener.Formerly)));
        Assert.Equal(30, thickener.Active!.Value.Percent);
        Assert.Equal(before.Run.PotNow().DoseOf("Sail"), after.Run.PotNow().DoseOf("Sail two"));
        Assert.Equal(Readings(before), Readings(after));
        Assert.Equal("Sail two", Assert.Single(Recipe.Of(after.Run).Parts).Thickener.Name);
        Assert.All(after.Contents().Where(r => r.Dosed is not null), r => Assert.Equal("Sail", r.Dosed!.Thickener));
        Assert.All(after.Contents().Where(r => r.Dosed is not null), r => Assert.Equal("Sail two", after.Renamed(r).Dosed!.Thickener));

        // What is exported now, and the file from before, say nothing that the log lacks.
        var exported = FileText.Write(after);
        Assert.Equal(0, log.Import(FileText.Read(exported), CancellationToken.None).Plan!.RecordCount);
        Assert.Equal(0, log.Import(FileText.Read(text), CancellationToken.None).Plan!.RecordCount);
        Assert.IsType<WriteOutcome.Saved>(log.Add(1, new() { Dosed = new("Sail two", Core.Quantities.Mass.FromGrams(0.1)) }));

        // And back: the first name is no longer a former one.
        Rename("Sail");
        Assert.Equal(["Sail two"], log.Run(1)!.File.Run.Thickeners[0].Formerly, StringComparer.Ordinal);

        void Rename(string name)
        {
            var form = RunForm.Of([], log.Run(1)!.File);
            Assert.IsType<WriteOutcome.Saved>(log.Restate(1, form.Read(Typed(form, ("thickener", name))).Value!));
        }

        static int Readings(RunFile file)
            => ((EvidenceOutcome.Usable)Evidence.Of(file.Run, file.Run.Thickeners[0])).Evidence.ReadingCount;
    }

    [Theory]
    [InlineData("thickener: TA; formerly=TA", "another name that it had before")]
    [InlineData("thickener: TA; formerly=TB; formerly=TB", "another name that it had before")]
    [InlineData("thickener: TA\n# thickener: TB; formerly=TA", "no other thickener of the header")]
    [InlineData("thickener: TA; formerly=TB\n# thickener: TB", "each thickener once")]
    [InlineData("thickener: TA; formerly=", "another name that it had before")]
    public void Former_names_that_say_nothing_clear_are_refused(string header, string expected)
    {
        Assert.Contains(expected, FileText.Refusal($"# base_g: 120\n# {header}\nadded_g\n"), StringComparison.Ordinal);
    }
}
