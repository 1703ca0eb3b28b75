using System.Collections.Immutable;
using System.Globalization;
using Viscolog.Core.Measuring;
using Viscolog.OilFiles;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;

namespace Viscolog.Tui.Materials;

/// <summary>The form of a certified oil that was read by a method; what the last one used is filled in.</summary>
internal static class OilForm
{
    public static Form<OilRow> Of(Method method, OilRow? last, DateOnly today)
    {
        string[] columns =
        [
            OilColumns.Oil, OilColumns.Certified, OilColumns.CertifiedAt, OilColumns.Uncertainty, OilColumns.Coefficient, .. Shown(method),
                OilColumns.At, OilColumns.Date, OilColumns.Note,
        ];
        string[] kept =
        [
            OilColumns.Oil,
            OilColumns.Certified,
            OilColumns.CertifiedAt,
            OilColumns.Uncertainty,
            OilColumns.Coefficient,
            OilColumns.Density,
            OilColumns.Factor,
            Columns.Speed.Name,
        ];
        ImmutableArray<FormField> fields =
        [
            .. columns.Select(c => new FormField(
                Label(c).Name,
                c == OilColumns.Date
                    ? today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                    : kept.Contains(c, StringComparer.Ordinal)
                    ? last?.Cells.GetValueOrDefault(c, "") ?? ""
                    : "",
                Label(c).Hint)),
        ];
        return new(
            Say($"A certified oil read by {method.Id}"),
            Say("The certificate's figures, then what the method showed. Several readings are better than one."),
            fields,
            texts => Read(method, columns, texts));
    }

    /// <summary>Which reading is to be void, and why.</summary>
    public static Form<MaterialsEvent> Void() => new(
        Say("Void the reading of an oil"),
        Say("It stays in the log with your reason, and no longer counts. F7 shows the numbers."),
        [new(Say("number")), new(Say("why"))],
        texts => !int.TryParse(texts[0].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? FormAnswer<MaterialsEvent>.Wrong(0, Say($"number: read '{texts[0].Trim()}', expected the number of a reading"))
            : texts[1].Trim() is not { Length: > 0 } reason
                ? FormAnswer<MaterialsEvent>.Wrong(1, Say("why: say what was wrong with it"))
                : FormAnswer<MaterialsEvent>.Of(new MaterialsEvent.OilVoidTyped(number, reason)));

    private static IEnumerable<string> Shown(Method method)
    {
        var scale = method.Scales[0];
        string[] beside = scale.HasSpeed ? [Columns.Speed.Name, OilColumns.Factor] : scale.IsTime ? [OilColumns.Density] : [];
        return [Columns.Of(scale).Name, .. beside];
    }

    private static (string Name, string Hint) Label(string column) => column switch
    {
        OilColumns.Oil => (Say("oil"), ""),
        OilColumns.Certified => (Say("certified"), "mPa·s"),
        OilColumns.CertifiedAt => (Say("certified at"), "°C"),
        OilColumns.Uncertainty => (Say("uncertainty"), Say("%, k = 2; 1 if empty")),
        OilColumns.Coefficient => (Say("temp. coefficient"), Say("K, if known")),
        OilColumns.At => (Say("read at"), "°C"),
        OilColumns.Density => (Say("its density"), "g/mL"),
        OilColumns.Factor => (Say("factor"), Say("mPa·s for 1 %")),
        OilColumns.Date => (Say("day"), Say("such as 2026-03-02")),
        OilColumns.Note => (Say("note"), ""),
        "viscosity_mpas" => (Say("read", "measured"), "mPa·s"),
        "cup_s" => (Say("read", "measured"), "s"),
        "ku" => (Say("read", "measured"), "KU"),
        "torque_pct" => (Say("read", "measured"), Say("% of torque")),
        "rpm" => (Say("speed"), "1/min"),
        _ => (column, ""),
    };

    private static FormAnswer<OilRow> Read(Method method, string[] columns, IReadOnlyList<string> texts)
    {
        var findings = new Findings("oil");
        var failed = 0;
        var cells = columns.Zip(texts).Where(c => c.Second.Trim().Length > 0)
            .Select(c => KeyValuePair.Create(c.First, TypedNumber.AsCell(c.Second.Trim())))
            .Append(KeyValuePair.Create(OilColumns.Method, method.Id))
            .ToImmutableDictionary(StringComparer.OrdinalIgnoreCase);
        var row = OilCells.Read(cells, new(findings, new(',')), column =>
        {
            failed = findings.Well && column is not null ? Math.Max(0, Array.IndexOf(columns, column)) : failed;
            return new(null, column, OneLine.Quoted(cells.GetValueOrDefault(column ?? "", "")));
        });
        if (row is not null)
        {
            return FormAnswer<OilRow>.Of(row);
        }

        var refusal = findings.Refusal!;
        return FormAnswer<OilRow>.Wrong(
            failed,
            refusal.Column is { } named
                ? Say($"{Label(named).Name}: read {refusal.Read}, expected {refusal.Expected}")
                : Say($"read {refusal.Read}, expected {refusal.Expected}"));
    }
}
