namespace Viscolog.Reports;

/// <summary>The style sheet of every document: a page of A4 or Letter in print, a column of text on a screen. No selector holds a sign
/// that HTML escapes.</summary>
internal static class PaperStyle
{
    /// <summary>All rules.</summary>
    public static string Sheet => Numbered + Rules;

    /// <summary>The margins of a page, and its number.</summary>
    private static string Numbered => $$"""

        @page {
          margin: 10mm 15mm 12mm;
          @bottom-right { content: counter(page) " {{Say("of", "pages")}} " counter(pages); font: 8pt sans-serif; color: #555; }
        }

        """;

    private const string Rules = """
        * { box-sizing: border-box; }
        html { color: #1a1a1a; background: #fff; font: 10.5pt/1.42 "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", sans-serif; }
        html { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
        body { max-width: 180mm; margin: 0 auto; padding: 12mm 0; }
        h1, h2, p, dl, dd, ul, figure, table { margin: 0; padding: 0; }
        h1, dd, td, li, .sub, footer { unicode-bidi: isolate; overflow-wrap: anywhere; }
        header { border-bottom: 1.5pt solid #1a1a1a; padding-bottom: 2.5mm; margin-bottom: 4mm; }
        .kind { font-size: 9pt; letter-spacing: 0.09em; text-transform: uppercase; color: #555; }
        h1 { font-size: 19pt; line-height: 1.2; font-weight: 600; }
        .sub { color: #444; margin-top: 0.6mm; }
        h2 { font-size: 12pt; font-weight: 600; margin: 5.5mm 0 1.8mm; break-after: avoid; }
        main p { margin-bottom: 2mm; orphans: 3; widows: 3; }
        dl { display: grid; grid-template-columns: 1fr 1fr; column-gap: 8mm; margin-bottom: 3mm; }
        dl div { display: flex; align-items: baseline; gap: 3mm; border-bottom: 0.5pt solid #bbb; padding: 1mm 0; break-inside: avoid; }
        dt { flex: 0 0 29mm; color: #555; font-size: 9.5pt; }
        dd { flex: 1; }
        dd.blank { min-height: 6mm; }
        table { width: 100%; border-collapse: collapse; font-size: 9.5pt; line-height: 1.3; margin-bottom: 2.5mm; }
        table { font-variant-numeric: tabular-nums; }
        thead { display: table-header-group; }
        th { text-align: left; vertical-align: bottom; font-weight: 600; font-size: 8.5pt; color: #333; }
        th { border-bottom: 1pt solid #1a1a1a; padding: 0.8mm 1.4mm; }
        td { vertical-align: top; border-bottom: 0.5pt solid #bbb; padding: 1.1mm 1.4mm; }
        th:first-child, td:first-child { padding-left: 0; }
        th:last-child, td:last-child { padding-right: 0; }
        th.number, td.number { text-align: right; }
        td.number { white-space: nowrap; }
        th.blank { text-align: center; }
        td.blank { border: 0.5pt solid #888; min-width: 13mm; height: 7.5mm; }
        .form td { vertical-align: middle; }
        main p.led { margin-top: 2.5mm; }
        .off { text-align: center; }
        tr { break-inside: avoid; }
        tr.total td { font-weight: 600; border-top: 1pt solid #1a1a1a; }
        tr.void td { color: #666; }
        ul { padding-left: 4.5mm; }
        li { margin-bottom: 0.9mm; break-inside: avoid; }
        .result { border: 0.75pt solid #777; border-left-width: 4pt; padding: 2.2mm 3.5mm; margin: 3.5mm 0; break-inside: avoid; }
        .result p { margin: 0; }
        .result .sign { font-size: 13.5pt; font-weight: 600; }
        .good { border-color: #00694c; }
        .good .sign { color: #00694c; }
        .bad { border-color: #a32900; }
        .bad .sign { color: #a32900; }
        figure { break-inside: avoid; margin: 2mm 0 3mm; }
        figure svg { display: block; width: 100%; height: auto; }
        figure.low svg { max-height: 41mm; }
        figcaption { font-size: 9pt; color: #444; }
        .sign-off { display: flex; gap: 8mm; margin-top: 13mm; break-inside: avoid; }
        .sign-off div { flex: 1; }
        .sign-off p { font-size: 8.5pt; color: #444; margin: 0; }
        .sign-off .line { border-bottom: 0.75pt solid #1a1a1a; height: 6mm; margin-bottom: 1mm; }
        footer { margin-top: 6mm; padding-top: 1.5mm; border-top: 0.5pt solid #bbb; font-size: 8pt; color: #555; }
        @media screen { body { padding: 12mm 6mm; max-width: 192mm; } }
        @media screen and (max-width: 640px) {
          body { padding: 5mm 4mm; }
          h1 { font-size: 16pt; }
          dl { grid-template-columns: 1fr; }
          thead { display: none; }
          table, tbody, tr, td { display: block; }
          tr { border-bottom: 1pt solid #1a1a1a; padding: 1.5mm 0; }
          tr.total td { border-top: 0; }
          td, td.number { display: flex; justify-content: space-between; gap: 4mm; padding: 0.5mm 0; border: 0; }
          td, td.number { text-align: right; white-space: normal; }
          td::before { content: attr(data-name); flex: 0 0 40%; text-align: left; color: #555; font-weight: 400; }
          td:empty { display: none; }
          td.blank, td.blank:empty { display: flex; align-items: center; border: 0; border-bottom: 0.5pt solid #888; }
          figure { overflow-x: auto; }
          figure svg, figure.low svg { width: 560px; max-height: none; }
          .sign-off { display: block; }
          .sign-off div { margin-bottom: 6mm; }
        }
        @media print {
          html { font-size: 8.8pt; line-height: 1.33; }
          body { max-width: none; padding: 0; }
          header { padding-bottom: 1.6mm; margin-bottom: 2.4mm; }
          h1 { font-size: 17pt; }
          h2 { font-size: 10.5pt; margin: 3.6mm 0 1.1mm; }
          dl div { padding: 0.7mm 0; }
          dt { font-size: 8.5pt; }
          main p { margin-bottom: 1.5mm; }
          table { font-size: 8.5pt; margin-bottom: 2mm; }
          td.blank { height: 7mm; }
          dd.blank { min-height: 5mm; }
          th { font-size: 8pt; }
          td { padding: 0.8mm 1.4mm; }
          li { margin-bottom: 0.5mm; }
          figure { margin: 1.2mm 0 1.6mm; }
          figure.high svg { max-height: 92mm; }
          figure.low svg { max-height: 33mm; }
          .result { margin: 2mm 0; padding: 1.6mm 3.5mm; }
          figcaption { font-size: 8pt; }
          .sign-off { margin-top: 4mm; break-after: avoid; }
          footer { margin-top: 3mm; font-size: 7.5pt; }
        }

        """;
}
