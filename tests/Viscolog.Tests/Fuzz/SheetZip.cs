using System.IO.Compression;

namespace Viscolog.Tests.Fuzz;

/// <summary>A workbook around the XML of rows that somebody made up.</summary>
internal static class SheetZip
{
    private const string Main = "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
    private const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"";
    private const string Kind = "application/vnd.openxmlformats-officedocument.spreadsheetml";

    /// <summary>The bytes of the file.</summary>
    /// <param name="rows">What stands between the beginning and the end of the sheet's data.</param>
    /// <param name="shared">The first of the texts that cells may share.</param>
    public static byte[] Of(string rows, string shared = "shared")
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Put(zip, "[Content_Types].xml", "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                + $"<Override PartName=\"/xl/workbook.xml\" ContentType=\"{Kind}.sheet.main+xml\"/>"
                + $"<Override PartName=\"/xl/s.xml\" ContentType=\"{Kind}.worksheet+xml\"/>"
                + $"<Override PartName=\"/xl/t.xml\" ContentType=\"{Kind}.sharedStrings+xml\"/>"
                + $"<Override PartName=\"/xl/y.xml\" ContentType=\"{Kind}.styles+xml\"/></Types>");
            Put(
                zip,
                "_rels/.rels",
                $"<Relationships {Package}><Relationship Id=\"a\" Type=\"{Office}/officeDocument\" Target=\"xl/workbook.xml\"/>"
                    + "</Relationships>");
            Put(
                zip,
                "xl/workbook.xml",
                $"<workbook {Main} xmlns:r=\"{Office}\"><sheets><sheet name=\"run\" sheetId=\"1\" r:id=\"a\"/></sheets></workbook>");
            Put(
                zip,
                "xl/_rels/workbook.xml.rels",
                $"<Relationships {Package}><Relationship Id=\"a\" Type=\"{Office}/worksheet\" Target=\"s.xml\"/>"
                    + $"<Relationship Id=\"b\" Type=\"{Office}/sharedStrings\" Target=\"t.xml\"/>"
                    + $"<Relationship Id=\"c\" Type=\"{Office}/styles\" Target=\"y.xml\"/></Relationships>");
            Put(
                zip,
                "xl/t.xml",
                $"<sst {Main}><si><t>{shared}</t></si><si><r><t xml:space=\"preserve\">rich </t></r><r><t>text</t></r></si></sst>");
            Put(
                zip,
                "xl/y.xml",
                $"<styleSheet {Main}><numFmts count=\"2\"><numFmt numFmtId=\"170\" formatCode=\"yyyy\\-mm\\-dd\"/>"
                    + "<numFmt numFmtId=\"171\" formatCode=\"0&quot; days&quot;\"/></numFmts>"
                    + "<cellXfs><xf/><xf numFmtId=\"170\"/><xf numFmtId=\"171\"/></cellXfs></styleSheet>");
            Put(
                zip,
                "xl/s.xml",
                rows.StartsWith("<!", StringComparison.Ordinal) ? rows : $"<worksheet {Main}><sheetData>{rows}</sheetData></worksheet>");
        }

        return stream.ToArray();
    }

    /// <summary>Adds a part.</summary>
    public static void Put(ZipArchive zip, string name, string text)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write(text);
    }
}
