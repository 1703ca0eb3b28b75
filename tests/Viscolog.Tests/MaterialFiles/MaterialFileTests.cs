using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.MaterialFiles;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.MaterialFiles;

public class MaterialFileTests
{
    private static readonly Gen<string> Line = Gen.Char["aB7 ,;\"'#=:.-+\tµé雨@"].Array[1, 10].Select(c => new string(c).Replace('\t', ' ').Trim()).Where(s => s.Length > 0);

    private static readonly Gen<double> Number = Gen.OneOf(Gen.Double[0.01, 99], Gen.Int[1, 9900].Select(i => i / 100.0));

    private static readonly Gen<Thickener> Thickeners = Gen.Select(Line.Where(ThickenerLine.CanName), Number, Gen.Enum<ThickenerChemistry>(), Gen.Bool, (name, v, chemistry, more) => new Thickener(name)
    {
        Chemistry = chemistry,
        UsualRange = new(Dose.FromPercent(v), Dose.FromPercent(v + 1)),
        Active = more ? Percentage.FromPercent(v) : null,
        PricePerKilogram = more ? (decimal)Math.Round(v, 2) : null,
        Dilution = more ? new(1, v) : PreDilution.None,
    });

    private static readonly Gen<Specification> Specifications = Gen.Select(Line, Number, Gen.Int[0, 5], Gen.Int[0, Method.All.Count - 1], (name, v, which, method) => new Specification(name)
    {
        Body = which switch
        {
            0 => null,
            1 => new Target.Value(Viscosity.FromMilliPascalSeconds(v), null),
            2 => new Target.Value(Viscosity.FromMilliPascalSeconds(v), Percentage.FromPercent(v / 2)),
            _ => new Target.Ends(Viscosity.FromMilliPascalSeconds(v), Viscosity.FromMilliPascalSeconds(v * 1.5)),
        },
        Method = which == 4 ? null : Method.All[method],
        ReferenceTemperature = which > 2 ? Temperature.FromCelsius(v) : null,
        Acidity = which > 3 ? new(Acidity.FromPh(v / 10), Acidity.FromPh(12.5)) : null,
        StringLength = which == 5 ? new(Length.FromMillimeters(v), Length.FromMillimeters(v + 2)) : null,
        MinimumReadings = which == 2 ? 1 + method : null,
        Base = which == 1 ? name : null,
        Thickener = which == 1 ? "TA" : null,
    });

    private static readonly Gen<Material> Materials = Gen.OneOf(
        Gen.Select(Line, Number, (name, v) => (Material)new Material.OfBase(new(name, Density.FromGramsPerMilliliter(v)))),
        Thickeners.Select(t => (Material)new Material.OfThickener(t)),
        Gen.Select(Line, Gen.Int[0, Method.All.Count - 1], Number, (name, m, v) => (Material)new Material.OfMethod(new(name, Method.All[m], v > 50 ? null : Percentage.FromPercent(v)))),
        Specifications.Select(s => (Material)new Material.OfSpecification(s)));

    private static readonly Gen<MaterialRow> Rows = Gen.Select(Materials, Line, Gen.Int[0, 3], (material, text, which) => new MaterialRow(
        material with { Note = which > 1 ? text : null, IsRetired = which == 2 },
        which == 3 ? ImmutableSortedDictionary<string, string>.Empty.Add("x-shelf", text) : ImmutableSortedDictionary<string, string>.Empty));

    private static readonly Gen<MaterialRow[]> Files = Rows.Array[0, 6].Select(rows => rows.DistinctBy(r => (MaterialCells.KindOf(r.Material), r.Material.Name)).ToArray());

    [Fact]
    public void What_is_written_reads_back_the_same()
        => Files.Sample(
            rows =>
            {
                Enter();
                Assert.Equal(Sorted(rows), Sorted(Read(Write(rows)).Rows), StringComparer.Ordinal);
                Assert.Equal(Write(rows), Write([.. Read(Write(rows)).Rows]));
                Assert.True(MaterialFileReader.IsMaterials(Encoding.UTF8.GetBytes(Write(rows))));
            },
            iter: 2000);

    [Fact]
    public void What_the_log_stores_reads_back_the_same()
        => Rows.Sample(
            row =>
            {
                Enter();
                Assert.Equal(Whole(row), Whole(StoredMaterials.Read(StoredMaterials.Of(row))));
            },
            iter: 2000);

    [Fact]
    public void Any_text_is_read_or_refused_with_one_line()
        => Gen.Select(Files, Gen.Int[0, int.MaxValue], Gen.Char["09.,;\"#:-e\n\r=a \0"], Gen.Int[0, 2]).Sample((rows, at, c, how) =>
        {
            Enter();
            var text = Write(rows);
            var i = at % text.Length;
            var changed = how switch { 0 => text.Remove(i, 1), 1 => text.Insert(i, c.ToString()), _ => text[..i] };
            switch (MaterialFileReader.Parse("m.csv", Encoding.UTF8.GetBytes(changed)))
            {
                case MaterialFileOutcome.Refused refused:
                    Assert.StartsWith("m.csv", refused.Refusal.Text, StringComparison.Ordinal);
                    Assert.DoesNotContain(refused.Refusal.Text, char.IsControl);
                    break;
                case MaterialFileOutcome.Read read:
                    Assert.Equal(Sorted(read.File.Rows), Sorted(Read(Write([.. read.File.Rows])).Rows), StringComparer.Ordinal);
                    break;
            }
        });

    [Theory]
    [InlineData("kind,name\nbases,GB\n", "m.csv, line 2, column kind: read 'bases', expected a kind: base, thickener, method, specification")]
    [InlineData("kind,name\nbase,\n", "m.csv, line 2, column name: read nothing, expected a name on one line")]
    [InlineData("kind,name\nthickener,T;A\n", "m.csv, line 2, column name: read 'T;A', expected a name on one line, without ';' and '='")]
    [InlineData("kind,name\nbase,GB\nbase,GB\n", "m.csv, line 3, column name: read 'GB', expected each base once")]
    [InlineData("kind,name,chemistry\nbase,GB,clay\n", "m.csv, line 2, column chemistry: read 'clay', expected an empty cell: a base has no chemistry")]
    [InlineData("kind,name,density_g_ml\nbase,GB,heavy\n", "m.csv, line 2, column density_g_ml: read 'heavy', expected a number in g/mL, at least 0.001, with a decimal point, without unit or thousands separators")]
    [InlineData("kind,name,density_kg_l\nbase,GB,1\n", "m.csv, line 1, column density_kg_l: read 'density_kg_l', expected density_g_ml: give it in that unit")]
    [InlineData("kind,name\nmethod,cup\n", "m.csv, line 2: read 'method,cup', expected a method in column method")]
    [InlineData("kind,name,method\nmethod,cup,cup\n", "m.csv, line 2, column method: read 'cup', expected a method: direct, iso-2431-4, d1200-4, d4212-44ml-4, d4212-23ml-4, krebs, rotational, falling-ball, slump; other cups by their number")]
    [InlineData("kind,name,target_low_mpas\nspecification,gel,900\n", "m.csv, line 2: read 'specification,gel,900', expected one target: target_mpas with or without tolerance_pct, or target_low_mpas below target_high_mpas")]
    [InlineData("kind,name,min_readings\nspecification,gel,1.5\n", "m.csv, line 2, column min_readings: read '1.5', expected a whole number of readings")]
    [InlineData("kind,name,ph\nspecification,gel,9-8\n", "m.csv, line 2, column ph: read '9-8', expected low-high in pH units, the low end first and smaller, each with a decimal point, without unit or thousands separators")]
    [InlineData("kind,name,retired\nbase,GB,gone\n", "m.csv, line 2, column retired: read 'gone', expected yes, no or an empty cell")]
    [InlineData("kind,note\nbase,GB\n", "m.csv, line 1: read 'kind,note', expected a header row with the columns kind and name, such as 'kind,name,density_g_ml,note'")]
    [InlineData("kind,name\nbase,GB,1\n", "m.csv, line 2: read 'base,GB,1', expected no more fields than the header row names; a text that holds the separator goes into quotes")]
    [InlineData("# viscolog-materials: 2\nkind,name\n", "m.csv, line 1: read 'viscolog-materials: 2', expected the header line '# viscolog-materials: 1' alone")]
    public void A_bad_file_is_refused_whole(string text, string refusal)
    {
        Enter();
        Assert.Equal(refusal, Assert.IsType<MaterialFileOutcome.Refused>(MaterialFileReader.Parse("m.csv", Encoding.UTF8.GetBytes(text))).Refusal.Text);
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
    [InlineData("# viscolog-run: 1\n", false)]
    [InlineData("", false)]
    public void A_materials_file_is_told_by_its_first_line(string text, bool expected)
        => Assert.Equal(expected, MaterialFileReader.IsMaterials(Encoding.UTF8.GetBytes(text)));

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
        Assert.Equal(1, log.State(Read("# viscolog-materials: 1\nkind,name,density_g_ml,retired\nbase,GB,1.2,\nthickener,TA,,yes\n").Rows).Stated);
        Assert.Equal("GB, TA retired", string.Join(", ", log.Materials().Select(m => m.Material.Name + (m.Material.IsRetired ? " retired" : ""))));
    }

    /// <summary>Called on the thread of each sample, since samples run on threads of their own.</summary>
    protected virtual void Enter()
    {
    }

    private static string Write(IEnumerable<MaterialRow> rows)
    {
        using var stream = new MemoryStream();
        MaterialFileWriter.Write(rows, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static MaterialFile Read(string text) => MaterialFileReader.Parse("m.csv", Encoding.UTF8.GetBytes(text)) switch
    {
        MaterialFileOutcome.Read read => read.File,
        MaterialFileOutcome.Refused refused => throw new InvalidOperationException(refused.Refusal.Text),
        _ => throw new InvalidOperationException("a case that the test does not know"),
    };

    private static IEnumerable<string> Sorted(IEnumerable<MaterialRow> rows) => rows.Select(Whole).Order(StringComparer.Ordinal);

    private static string Whole(MaterialRow row) => $"{row.Material} {string.Join('|', row.Unknown)}";
}
