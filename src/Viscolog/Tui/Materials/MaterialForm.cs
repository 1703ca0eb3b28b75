using System.Collections.Immutable;
using Viscolog.MaterialFiles;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;

namespace Viscolog.Tui.Materials;

/// <summary>The form of a material: the columns that its kind has.</summary>
internal static class MaterialForm
{
    /// <summary>Which kind is to be added.</summary>
    public static Form<MaterialsEvent> Kind() => new(
        Say("Add a material"),
        "",
        [new(Say("kind"), KindWords.Of(MaterialKind.Base), KindWords.List) { Choices = [.. MaterialKind.All.Select(KindWords.Of)] }],
        texts => KindWords.Find(texts[0].Trim()) is { } kind
            ? FormAnswer<MaterialsEvent>.Of(new MaterialsEvent.KindChosen(kind))
            : FormAnswer<MaterialsEvent>.Wrong(0, Say($"one of {KindWords.List}")));

    /// <summary>Its cells; the name of one that is kept stays.</summary>
    public static Form<MaterialsEvent> Of(string kind, MaterialRow? kept)
    {
        var columns = MaterialColumns.All.Where(c => c.Kinds.Contains(kind, StringComparer.Ordinal) && c.Name != "retired").ToList();
        var cells = kept is null ? [] : MaterialCells.Of(kept);
        ImmutableArray<FormField> fields = [.. columns.Select(c => new FormField(c.Name, cells.GetValueOrDefault(c.Name, "")))];
        return kept is null
            ? new(
                KindWords.New(kind),
                "",
                [new(Say("name")), .. fields],
                texts => Read(kind, texts[0].Trim(), columns, [.. texts.Skip(1)], 1, kept))
            : new(
                $"{KindWords.Of(kind)} {kept.Material.Name}",
                "",
                fields,
                texts => Read(kind, kept.Material.Name, columns, texts, 0, kept));
    }

    private static FormAnswer<MaterialsEvent> Read(
        string kind,
        string name,
        List<MaterialColumn> columns,
        IReadOnlyList<string> texts,
        int offset,
        MaterialRow? kept)
    {
        if (!MaterialKind.CanName(kind, name))
        {
            return FormAnswer<MaterialsEvent>.Wrong(0, MaterialKind.NameAdvice(kind));
        }

        var findings = new Findings(name);
        var failed = 0;
        var cells = columns.Zip(texts).Where(c => c.Second.Trim().Length > 0)
            .Select(c => KeyValuePair.Create(c.First.Name, TypedNumber.AsCell(c.Second.Trim())))
            .Concat(kept?.Unknown ?? ImmutableSortedDictionary<string, string>.Empty);
        var row = MaterialCells.Read(kind, name, cells, new(findings, new(',')), column =>
        {
            failed = findings.Well && column is not null ? Math.Max(0, columns.FindIndex(c => c.Name == column)) : failed;
            return new(null, column, OneLine.Quoted(columns.FindIndex(c => c.Name == column) is >= 0 and var i ? texts[i] : ""));
        });
        if (row is null)
        {
            var refusal = findings.Refusal!;
            return FormAnswer<MaterialsEvent>.Wrong(
                failed + offset, Say($"{refusal.Column}: read {refusal.Read}, expected {refusal.Expected}"));
        }

        var material = row.Material with { IsRetired = kept?.Material.IsRetired == true };
        return FormAnswer<MaterialsEvent>.Of(new MaterialsEvent.Typed(row with { Material = material }));
    }
}
