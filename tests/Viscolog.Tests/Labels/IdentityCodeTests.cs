using System.Globalization;
using System.Text.RegularExpressions;
using Viscolog.Labels;
using Viscolog.Tests.Support;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Viscolog.Tests.Labels;

/// <summary>The QR code of a label, read back by a decoder of another project (ZXing.Net) from what a page draws.</summary>
public sealed partial class IdentityCodeTests : IDisposable
{
    private static readonly Guid Id = Guid.Parse("019ac1d2-7c11-7a30-9d5e-0123456789ab");

    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string> Names =>
    [
        "Lantern gel 21",
        "x",
        "Łódź gel № 7 – 漆",
        "🎨 a name with a picture",
        "<script>alert('x')</script> & \"more\"",
        new string('n', 500),
        string.Concat(Enumerable.Repeat("漆ゲル", 100)),
    ];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public void Another_decoder_reads_the_identity_back(string name)
    {
        var text = IdentityCode.Text(Id, name);
        Assert.Equal(
            text, Decoded(IdentityCode.Modules(text).Select(r => Enumerable.Range(0, r.Count).Select(x => r[x]).ToArray()).ToArray()));
        Assert.StartsWith("urn:uuid:019ac1d2-7c11-7a30-9d5e-0123456789ab\n", text, StringComparison.Ordinal);
        Assert.StartsWith(name[..1], text.Split('\n')[1], StringComparison.Ordinal);
        Assert.Equal(name.Length > 100, text.EndsWith('…'));
    }

    /// <summary>ISO/IEC 18004:2015, 6.3.8: a quiet zone of 4 modules on every side; 5.3.1: 17 + 4 × version modules across.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_quiet_zone_is_four_modules_and_the_code_square(string name)
    {
        var rows = IdentityCode.Modules(IdentityCode.Text(Id, name));
        var (dark, side) = (Dark(rows), rows.Count);
        Assert.All(rows, r => Assert.Equal(side, r.Count));
        Assert.Equal((4, 4, side - 5, side - 5), (dark.Min(d => d.X), dark.Min(d => d.Y), dark.Max(d => d.X), dark.Max(d => d.Y)));
        Assert.Equal(4, IdentityCode.QuietZone);
        Assert.InRange((side - 8 - 17) / 4.0, 1, 6);
        Assert.Equal(0, (side - 8 - 17) % 4);
    }

    /// <summary>
    /// A module stays wide enough for a telephone: 0.4 mm, about the least that GS1 asks of QR codes at a counter (0.396 mm; from memory).
    /// </summary>
    [Fact]
    public void A_module_is_wide_enough_on_every_sheet()
        => Assert.All(
            LabelSheet.All, s => Assert.True(LabelPage.CodeSide(s) / (17 + (4 * 6) + (2 * IdentityCode.QuietZone)) >= 0.4, s.Name));

    [Fact]
    public void The_code_that_a_page_draws_reads_back_as_the_run_of_the_log()
    {
        var log = _folder.Of("log");
        Assert.Equal(0, Called.In(log, "import", Checkout.Sample("checks/lantern-gel-21.csv")).Code);
        var file = _folder.Of("labels.html");
        var called = Called.In(log, "label", "1", "--batch", "--copies", "2", "-o", file);
        Assert.True((called.Code, called.Error) == (0, ""), called.Error);
        var codes = Path().Matches(File.ReadAllText(file)).Select(m => Decoded(Drawn(m.Groups["side"].Value, m.Groups["d"].Value)))
            .ToArray();
        Assert.Equal(2, codes.Length);
        Assert.Equal(codes[0], codes[1]);
        var lines = codes[0].Split('\n');
        Assert.Equal("Lantern gel 21", lines[1]);
        Assert.Equal(0, Called.In(log, "show", lines[0]["urn:uuid:".Length..]).Code);
    }

    private static List<(int X, int Y)> Dark(IReadOnlyList<System.Collections.BitArray> rows)
        => [.. rows.SelectMany((r, y) => Enumerable.Range(0, r.Count).Where(x => r[x]).Select(x => (x, y)))];

    /// <summary>The modules that a path of horizontal bars covers.</summary>
    private static bool[][] Drawn(string side, string path)
    {
        var count = int.Parse(side, CultureInfo.InvariantCulture);
        bool[][] rows = [.. Enumerable.Range(0, count).Select(_ => new bool[count])];
        foreach (Match bar in Bar().Matches(path))
        {
            Array.Fill(rows[Number(bar, "y")], true, Number(bar, "x"), Number(bar, "width"));
        }

        return rows;
    }

    private static int Number(Match bar, string group) => int.Parse(bar.Groups[group].Value, CultureInfo.InvariantCulture);

    private static string Decoded(bool[][] rows)
    {
        const int scale = 4;
        var side = rows.Length * scale;
        byte[] light = [.. Enumerable.Range(0, side * side).Select(i => rows[i / side / scale][i % side / scale] ? (byte)0 : (byte)255)];
        var bitmap = new BinaryBitmap(
            new HybridBinarizer(new RGBLuminanceSource(light, side, side, RGBLuminanceSource.BitmapFormat.Gray8)));
        var result = new QRCodeReader().decode(bitmap, new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });
        Assert.NotNull(result);
        return result.Text;
    }

    [GeneratedRegex("<svg[^>]*viewBox=\"0 0 (?<side>[0-9]+) [0-9]+\"[^>]*><path d=\"(?<d>[^\"]*)\"", RegexOptions.None, 1000)]
    private static partial Regex Path();

    [GeneratedRegex("M(?<x>[0-9]+) (?<y>[0-9]+)h(?<width>[0-9]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bar();
}
