using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.MaterialFiles;
using Viscolog.Store.Copy;
using Viscolog.Tests.Support;
using static Viscolog.Tests.MaterialFiles.MaterialText;

namespace Viscolog.Tests.MaterialFiles;

public class MaterialFileTests
{
    private static readonly string[] Words = ["base,", "thickener,", "method,", "specification,", "krebs", "8-9", "yes", "\n"];

    [Fact]
    public void What_is_written_reads_back_the_same()
        => MaterialGen.Files.Sample(
            rows =>
            {
                Enter();
                Assert.Equal(Sorted(rows), Sorted(Read(Write(rows)).Rows), StringComparer.Ordinal);
                Assert.Equal(Write(rows), Write([.. Read(Write(rows)).Rows]));
                Assert.True(MaterialFileReader.Key.Begins(Encoding.UTF8.GetBytes(Write(rows))));
            },
            iter: 2000);

    [Fact]
    public void What_the_log_stores_reads_back_the_same()
        => MaterialGen.Rows.Sample(
            row =>
            {
                Enter();
                Assert.Equal(Whole(row), Whole(StoredCells.Material(StoredCells.Of(row))));
            },
            iter: 2000);

    [Fact]
    public void Any_text_is_read_or_refused_with_one_line()
        => Gen.Select(MaterialGen.Files, Gen.Int[0, int.MaxValue], Gen.Char["09.,;\"#:-e\n\r=a \0"], Gen.Int[0, 2])
            .Sample((rows, at, c, how) =>
        {
            Enter();
            var text = Write(rows);
            var i = at % text.Length;
            var changed = how switch { 0 => text.Remove(i, 1), 1 => text.Insert(i, c.ToString()), _ => text[..i] };
            AssertAnswer(Encoding.UTF8.GetBytes(changed));
        });

    [Fact]
    public void Any_bytes_are_read_or_refused_with_one_line()
        => Gen.Byte.Array[0, 60].Sample(bytes =>
        {
            Enter();
            AssertAnswer(bytes);
            AssertAnswer(Encoding.UTF8.GetBytes("# viscolog-materials: 1\nkind,name,note\nbase,").Concat(bytes).ToArray());
        });

    [Fact]
    public void Any_text_after_a_header_row_is_read_or_refused_with_one_line()
        => Gen.OneOf(
            Gen.Char["19.,;\"#:-e\n\r=a \té"].Select(c => c.ToString()),
            Gen.Int[0, Words.Length - 1].Select(i => Words[i])).Array[0, 30].Sample(parts =>
        {
            Enter();
            AssertAnswer(
                Encoding.UTF8.GetBytes(
                    "# viscolog-materials: 1\nkind,name,method,target_mpas,ph,min_readings,retired,shelf\n" + string.Concat(parts)));
        });

    [Fact]
    public void A_semicolon_file_with_decimal_commas_says_the_same()
        => MaterialGen.Files.Sample(
            rows =>
            {
                Enter();
                Assert.Equal(Sorted(rows), Sorted(Read(Semicolons(rows)).Rows), StringComparer.Ordinal);
            },
            iter: 1000);

    [Fact]
    public void Zeros_at_the_end_of_a_price_are_no_other_price()
    {
        Enter();
        AssertAnswer("# viscolog-materials: 1\nkind,name,price_per_kg\nthickener,TA,88.0\n"u8.ToArray());
    }

    [Fact]
    public void Semicolons_go_with_decimal_commas()
    {
        Enter();
        var row = Read("# viscolog-materials: 1\nkind;name;density_g_ml;note\nbase;GB;1,25;a, b\n").Rows.Single();
        Assert.Equal(1.25, Assert.IsType<Material.OfBase>(row.Material).Base.Density!.Value.GramsPerMilliliter);
        Assert.Equal("a, b", row.Material.Note);
    }

    [Theory]
    [InlineData("\uFEFF\n  # viscolog-materials: 1\n", true)]
    [InlineData("#viscolog-materials: 9", true)]
    [InlineData("#\r\n\r\n# Viscolog-Materials : 1\r\nkind", true)]
    [InlineData("# viscolog-materials: 1;;;;\r\n", true)]
    [InlineData("# viscolog-materials-of-old: 1\n", false)]
    [InlineData("# viscolog-materials\n: 1", false)]
    [InlineData("viscolog-materials: 1\n", false)]
    [InlineData("# viscolog-run: 1\n# viscolog-materials: 1\n", false)]
    [InlineData("# note: viscolog-materials: 1\n", false)]
    [InlineData("#", false)]
    [InlineData("\uFEFF", false)]
    [InlineData("", false)]
    public void A_materials_file_is_told_by_its_first_line(string text, bool expected)
        => Assert.Equal(expected, MaterialFileReader.Key.Begins(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public void Any_bytes_are_told_to_be_one_or_not()
        => Gen.Byte.Array[0, 40].Sample(bytes =>
        {
            Assert.True(MaterialFileReader.Key.Begins([.. "# viscolog-materials:"u8, .. bytes]));
            Assert.False(MaterialFileReader.Key.Begins([.. "kind,name\n"u8, .. bytes]));
        });

    [Fact]
    public void Capitals_make_no_difference()
    {
        Enter();
        var rows = Read(
            "# Viscolog-Materials: 1\nKIND,Name,Density_g_mL,CHEMISTRY,Retired\nBase,Gable,1.1,,\nTHICKENER,TA,,Clay,YES\n").Rows;
        Assert.Equal(
            [
                new Material.OfBase(new("Gable", Density.FromGramsPerMilliliter(1.1))),
                new Material.OfThickener(new("TA") { Chemistry = ThickenerChemistry.Clay }) { IsRetired = true },
            ],
            rows.Select(r => r.Material));
    }

    [Fact]
    public void Every_column_reaches_its_material()
    {
        Enter();
        const string Names = "kind,name,chemistry,range_pct,active_pct,density_g_ml,price_per_kg,dilution,method,repeatability_pct,"
            + "base,thickener,target_mpas,target_low_mpas,target_high_mpas,tolerance_pct,target_string_mm,reference_temp_c,ph,min_readings,"
            + "note,retired";
        const string Text = $"""
            # viscolog-materials: 1
            {Names}
            thickener,TU,associative,0.2-2,25,1.04,6.50,1:3,,,,,,,,,,,,,stir slowly,no
            method,hall cup,,,,,,,iso-2431-4,2.5,,,,,,,,,,,,
            specification,wall gel,,,,,,,krebs,,Gable,TU,9000,,,12,30-55,20,8.2-9.4,3,,yes
            specification,roof gel,,,,,,,,,,,,4000,5000,,,,,,,

            """;
        var thickener = new Thickener("TU")
        {
            Chemistry = ThickenerChemistry.Associative,
            UsualRange = new(Dose.FromPercent(0.2), Dose.FromPercent(2)),
            Active = Percentage.FromPercent(25),
            Density = Density.FromGramsPerMilliliter(1.04),
            PricePerKilogram = 6.5m,
            Dilution = new(1, 3),
        };
        var wall = new Specification("wall gel")
        {
            Body = new Target.Value(Viscosity.FromMilliPascalSeconds(9000), Percentage.FromPercent(12)),
            Method = Method.Find("krebs"),
            ReferenceTemperature = Temperature.FromCelsius(20),
            Acidity = new(Acidity.FromPh(8.2), Acidity.FromPh(9.4)),
            StringLength = new(Length.FromMillimeters(30), Length.FromMillimeters(55)),
            MinimumReadings = 3,
            Base = "Gable",
            Thickener = "TU",
        };
        var roof = new Specification("roof gel")
        {
            Body = new Target.Ends(Viscosity.FromMilliPascalSeconds(4000), Viscosity.FromMilliPascalSeconds(5000)),
        };
        Assert.Equal(
            [
                new Material.OfThickener(thickener) { Note = "stir slowly" },
                new Material.OfMethod(new("hall cup", Method.Find("iso-2431-4")!, Percentage.FromPercent(2.5))),
                new Material.OfSpecification(wall) { IsRetired = true },
                new Material.OfSpecification(roof),
            ],
            Read(Text).Rows.Select(r => r.Material));
        Assert.Empty(Read(Text).Warnings);
    }

    [Fact]
    public void Texts_are_kept_as_they_stand_and_unknown_columns_are_warned_of()
    {
        Enter();
        var file = Read("kind,name,shelf,note\nbase,GB,\" A3\",\" two\r\nlines \"\n");
        Assert.Equal(["m.csv, line 1: column 'shelf' is unknown; it is kept, not used"], file.Warnings);
        Assert.Equal(" two\r\nlines ", file.Rows[0].Material.Note);
        Assert.Equal("# viscolog-materials: 1\nkind,name,note,shelf\nbase,GB,\" two\r\nlines \",\" A3\"\n", Write(file.Rows));
    }

    [Fact]
    public void Columns_of_several_files_that_differ_in_capitals_are_written_as_one()
    {
        Enter();
        var text = Write(Read("kind,name,shelf\nbase,GB,A3\n").Rows.Concat(Read("kind,name,Shelf\nbase,GC,B1\n").Rows));
        Assert.Equal("# viscolog-materials: 1\nkind,name,Shelf\nbase,GB,A3\nbase,GC,B1\n", text);
        Assert.Equal(2, Read(text).Rows.Length);
    }

    [Theory]
    [InlineData(MaterialKind.Thickener, "T;A")]
    [InlineData(MaterialKind.Thickener, " TA")]
    [InlineData(MaterialKind.Base, "G\nB")]
    [InlineData(MaterialKind.Base, "GB ")]
    public void A_name_that_no_file_can_hold_is_a_mistake(string kind, string name)
    {
        Material material = kind == MaterialKind.Base ? new Material.OfBase(new(name)) : new Material.OfThickener(new(name));
        Assert.Throws<ArgumentException>(() => Write([new(material, ImmutableSortedDictionary<string, string>.Empty)]));
    }

    [Fact]
    public void The_sample_and_the_documented_example_read_without_a_warning()
    {
        Enter();
        Assert.Empty(Read(File.ReadAllText(Path.Combine(Checkout.Root, "sample-runs", "materials", "workshop.csv"))).Warnings);
        var doc = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "file-formats.md"));
        Assert.Empty(Read(doc.Split("```\n").Single(part => part.StartsWith("# viscolog-materials", StringComparison.Ordinal))).Warnings);
        Assert.All(MaterialColumns.All, c => Assert.Contains($"`{c.Name}`", doc, StringComparison.Ordinal));
    }

    [Fact]
    public void The_log_keeps_materials_and_states_only_what_changed()
    {
        using var bench = new Store.Bench();
        using var log = bench.Open();
        var rows = Read("# viscolog-materials: 1\nkind,name,density_g_ml\nbase,GB,1.2\nthickener,TA,\n").Rows;
        Assert.Equal(2, log.State(rows).Stated);
        Assert.Equal(0, log.State(rows).Stated);
        Assert.Equal(
            1, log.State(Read("# viscolog-materials: 1\nkind,name,density_g_ml,retired\nbase,GB,1.2,\nthickener,TA,,yes\n").Rows).Stated);
        Assert.Equal(
            "GB, TA retired", string.Join(", ", log.Materials().Select(m => m.Material.Name + (m.Material.IsRetired ? " retired" : ""))));
    }

    [Fact]
    public void A_folder_of_earlier_runs_may_hold_a_materials_file()
    {
        var folder = Checkout.Sample("materials");
        var called = Called.With("advise", Checkout.Sample("lantern-gel-07.csv"), "--history", folder);
        Assert.Equal((0, $"warning: {Path.Combine(folder, "workshop.csv")}: not a run file that can be read, "
            + $"skipped\n"), (called.Code, called.Error.ReplaceLineEndings("\n")));
    }

    /// <summary>Called on the thread of each sample, since samples run on threads of their own.</summary>
    protected virtual void Enter()
    {
    }
}
