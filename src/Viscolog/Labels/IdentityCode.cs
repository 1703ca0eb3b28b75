using System.Collections;
using System.Globalization;
using System.Text;
using QRCoder;
using Viscolog.Reports;
using Viscolog.Text;

namespace Viscolog.Labels;

/// <summary>
/// A run's identity as a QR code (ISO/IEC 18004): the UUID as a URN (RFC 9562) where the run has one, and the name on a line of its own.
/// </summary>
internal static class IdentityCode
{
    /// <summary>White modules round the code (ISO/IEC 18004, 6.3.8).</summary>
    public const int QuietZone = 4;

    /// <summary>
    /// A longer name is shortened: with its UUID the text then fits version 6 at level M, so that a module of the smallest label stays
    /// wide enough for a telephone's camera.
    /// </summary>
    private const int MostBytes = 56;

    /// <summary>What the code says.</summary>
    public static string Text(Guid? id, string name)
    {
        var plain = PlainText.Clean(name);
        for (var columns = MostBytes; Encoding.UTF8.GetByteCount(plain) > MostBytes; columns--)
        {
            plain = PlainText.Shorten(plain, columns);
        }

        return id is { } known ? $"urn:uuid:{known:D}\n{plain}" : plain;
    }

    /// <summary>Rows of modules, a dark one true, the quiet zone round them.</summary>
    public static IReadOnlyList<BitArray> Modules(string text)
    {
        var mode = text.All(char.IsAscii) ? QRCodeGenerator.EciMode.Default : QRCodeGenerator.EciMode.Utf8;
        using var made = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M, forceUtf8: false, utf8BOM: false, mode);
        return made.ModuleMatrix;
    }

    /// <summary>The code as a drawing, one unit a module.</summary>
    public static SvgPicture Draw(string text)
    {
        var rows = Modules(text);
        var path = new StringBuilder();
        foreach (var (y, row) in rows.Index())
        {
            for (var x = 0; x < row.Count; x++)
            {
                var end = x;
                while (end < row.Count && row[end])
                {
                    end++;
                }

                if (end > x)
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h{end - x}v1H{x}z");
                    x = end;
                }
            }
        }

        var side = rows.Count.ToString(CultureInfo.InvariantCulture);
        return SvgPicture.Of(Encoding.UTF8.GetBytes($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" "
            + $"shape-rendering=\"crispEdges\"><path d=\"{path}\"/></svg>"));
    }
}
