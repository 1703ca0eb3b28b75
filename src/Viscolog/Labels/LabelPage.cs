using Viscolog.Reports;

namespace Viscolog.Labels;

/// <summary>
/// Writes labels as an HTML file: in print at their places on the sheets, on a screen one after the other. Text that a label has no room
/// for ends in an ellipsis; the code keeps its size.
/// </summary>
internal static class LabelPage
{
    /// <summary>Room inside a label's edge, so that a sheet may shift a little in the printer.</summary>
    public const double Edge = 3.5;

    public static byte[] Write(LabelOrder order)
        => HtmlPen.Write(Say($"Labels: {order.Label.Name}"), Style(order.Sheet), pen => Body(order, pen));

    /// <summary>The side of the code with its quiet zone, in mm.</summary>
    public static double CodeSide(LabelSheet sheet) => Math.Clamp(sheet.Height * 0.42, 22, 44);

    private static void Body(LabelOrder order, HtmlPen pen)
    {
        pen.Open("p", ("class", "how"));
        pen.Text(Say($"{order.Sheet.Size}, {order.Sheet.Columns} by {order.Sheet.Rows} on {order.Sheet.Page.Name}: print at actual size "
            + $"(100 %), without margins or headers. They are not the hazard labels that the law requires."));
        pen.Close();
        pen.Line();
        var places = Enumerable.Repeat(false, order.Start - 1).Concat(Enumerable.Repeat(true, order.Copies));
        foreach (var sheet in places.Chunk(order.Sheet.Count))
        {
            pen.Open("section");
            pen.Line();
            foreach (var isLabel in sheet)
            {
                Place(isLabel ? order.Label : null, pen);
                pen.Line();
            }

            pen.Close();
            pen.Line();
        }
    }

    private static void Place(Label? label, HtmlPen pen)
    {
        if (label is null)
        {
            pen.Element("div", "", "used");
            return;
        }

        pen.Open("article");
        pen.Open("div", ("class", "top"));
        pen.Open("div", ("class", "words"));
        pen.Element("h1", label.Name);
        pen.Open("dl");
        foreach (var fact in label.Facts)
        {
            pen.Open("div");
            pen.Element("dt", fact.Name);
            pen.Element("dd", fact.Text ?? "", fact.Text is null ? "blank" : null);
            pen.Close();
        }

        pen.Close();
        pen.Close();
        pen.Draw(IdentityCode.Draw(label.Code), Say($"QR code: {label.Code}"));
        pen.Close();
        pen.Element("p", label.Cautions, "cautions");
        pen.Close();
    }

    private static string Style(LabelSheet sheet)
    {
        var (width, height, code) = (LabelSheet.Mm(sheet.Width), LabelSheet.Mm(sheet.Height), LabelSheet.Mm(CodeSide(sheet)));
        var (text, lines) = sheet.Height switch
        {
            < 45 => ("6.5", "1"),
            < 60 => ("8.5", "2"),
            < 80 => ("10", "2"),
            < 100 => ("11.5", "2"),
            _ => ("15", "3"),
        };
        return $$"""

            @page { size: {{LabelSheet.Mm(sheet.Page.Width)}} {{LabelSheet.Mm(sheet.Page.Height)}}; margin: 0; }
            * { box-sizing: border-box; margin: 0; padding: 0; }
            html { color: #000; background: #fff; }
            html { font: {{text}}pt/1.15 "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", sans-serif; }
            article { width: {{width}}; height: {{height}}; padding: {{LabelSheet.Mm(Edge)}}; overflow: hidden; break-inside: avoid; }
            article { display: flex; flex-direction: column; }
            .top { flex: 1; min-height: 0; display: flex; gap: 1mm; }
            .top svg { flex: none; width: {{code}}; height: {{code}}; }
            .words { flex: 1; min-width: 0; overflow: hidden; }
            h1 { font-size: 1.35em; font-weight: 600; overflow-wrap: anywhere; margin-bottom: 0.1em; }
            h1 { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: {{lines}}; }
            h1, dd { unicode-bidi: isolate; overflow: hidden; text-overflow: ellipsis; }
            dl div { display: flex; align-items: flex-end; gap: 1mm; }
            dt { flex: 0 0 3.6em; color: #333; }
            dd { flex: 1; min-width: 0; white-space: nowrap; }
            dd.blank { border-bottom: 0.5pt solid #777; }
            .cautions { flex: none; font-size: 0.9em; }
            @media screen {
              html { padding: 4mm; }
              .how { font-size: 10.5pt; margin-bottom: 4mm; }
              section { display: flex; flex-wrap: wrap; gap: 3mm; margin-bottom: 3mm; }
              article { max-width: 100%; border: 0.5pt dashed #999; }
              .used { display: none; }
            }
            @media print {
              .how { display: none; }
              section { display: grid; grid-template-columns: repeat({{sheet.Columns}}, {{width}}); grid-auto-rows: {{height}}; }
              section { column-gap: {{LabelSheet.Mm(sheet.Gap)}}; align-content: start; overflow: hidden; break-after: page; }
              section { width: {{LabelSheet.Mm(sheet.Page.Width)}}; height: {{LabelSheet.Mm(sheet.Page.Height - 0.1)}}; }
              section { padding: {{LabelSheet.Mm(sheet.Top)}} 0 0 {{LabelSheet.Mm(sheet.Left)}}; }
              section:last-child { break-after: auto; }
            }

            """;
    }
}
