using System.Collections.Immutable;
using CsCheck;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.MaterialFiles;
using Viscolog.RunFiles;

namespace Viscolog.Tests.MaterialFiles;

/// <summary>Generates materials that hold all that the format can hold.</summary>
internal static class MaterialGen
{
    private static readonly Gen<string> Line = Gen.Char["aB7 ,;\"'#=:.-+\tµé雨@"].Array[1, 10]
        .Select(c => new string(c).Replace('\t', ' ').Trim()).Where(s => s.Length > 0);

    // Notes and unknown columns keep their texts as they stand.
    private static readonly Gen<string> Cell = Gen.Char["aB7 ,;\"'#=:.-+\t\n\rµé雨@"].Array[1, 10].Select(c => new string(c))
        .Where(s => !string.IsNullOrWhiteSpace(s));

    private static readonly Gen<double> Number = Gen.OneOf(Gen.Double[0.01, 99], Gen.Int[1, 9900].Select(i => i / 100.0));

    private static readonly Gen<Thickener> Thickeners = Gen.Select(
        Line.Where(ThickenerLine.CanName),
        Number,
        Gen.Enum<ThickenerChemistry>(),
        Gen.Bool,
        (name, v, chemistry, more) => new Thickener(name)
        {
            Chemistry = chemistry,
            UsualRange = new(Dose.FromPercent(v), Dose.FromPercent(v + 1)),
            Active = more ? Percentage.FromPercent(v) : null,
            PricePerKilogram = more ? (decimal)Math.Round(v, 2) : null,
            Dilution = more ? new(1, v) : PreDilution.None,
        });

    private static readonly Gen<Specification> Specifications =
        Gen.Select(Line, Number, Gen.Int[0, 5], Gen.Int[0, Method.All.Count - 1], (name, v, which, method) => new Specification(name)
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
        Gen.Select(
            Line,
            Gen.Int[0, Method.All.Count - 1],
            Number,
            (name, m, v) => (Material)new Material.OfMethod(new(name, Method.All[m], v > 50 ? null : Percentage.FromPercent(v)))),
        Specifications.Select(s => (Material)new Material.OfSpecification(s)));

    /// <summary>Any material, with a column that the format does not know.</summary>
    public static readonly Gen<MaterialRow> Rows = Gen.Select(Materials, Cell, Gen.Int[0, 3], (material, text, which) => new MaterialRow(
        material with { Note = which > 1 ? text : null, IsRetired = which == 2 },
        which == 3
            ? ImmutableSortedDictionary<string, string>.Empty.Add("x-shelf", text)
            : ImmutableSortedDictionary<string, string>.Empty));

    /// <summary>The materials of any file.</summary>
    public static readonly Gen<MaterialRow[]> Files = Rows.Array[0, 6]
        .Select(rows => rows.DistinctBy(r => (MaterialCells.KindOf(r.Material), r.Material.Name)).ToArray());
}
