using System.Buffers.Binary;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Viscolog.Core.Advising;
using Viscolog.Output;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Plots;

public sealed class PictureFileTests
{
    public static TheoryData<string, string> KindsAndEndings => new(
        from kind in RunPlots.Kinds([SamplePictures.Full()])
            .Select(k => k.ToString())
        from ending in new[] { "svg", "pdf", "png" }
        select (kind, ending));

    [Theory]
    [MemberData(nameof(KindsAndEndings))]
    public void The_same_pictures_give_the_same_bytes_in_any_culture(string kind, string ending)
    {
        using var folder = new TemporaryFolder();
        var first = Bytes(folder, $"a.{ending}", kind, SamplePictures.Full());
        var second = Bytes(folder, $"b.{ending}", kind, SamplePictures.Full());
        using var german = new CultureSwitch("de-DE");
        var third = Bytes(folder, $"c.{ending}", kind, SamplePictures.Full());
        Assert.Equal(first, second);
        Assert.Equal(first, third);
        Assert.Equal([$"a.{ending}", $"b.{ending}", $"c.{ending}"], folder.Names);
    }

    [Theory]
    [MemberData(nameof(KindsAndEndings))]
    public void Odd_pictures_are_drawn_all_the_same(string kind, string ending)
    {
        using var folder = new TemporaryFolder();
        // What is drawn is the same in every format, so a sample of the slow ones will do, those with odd letters always among it.
        var all = OddPictures.All();
        var letters = all.Index().First(p => p.Item[0].Name?.Contains('\0', StringComparison.Ordinal) == true).Index;
        int[] tried = ending == "svg" ? [.. Enumerable.Range(0, all.Count)] : [.. Sweep.Places(0, all.Count - 1, 5, [letters])];
        foreach (var (i, pictures) in all.Index().Where(p => tried.Contains(p.Index)))
        {
            var outcome = PictureFile.Write(RunPlots.Of(pictures, Enum.Parse<PlotKind>(kind)), folder.Of($"{i}.{ending}"), force: false);
            Assert.NotNull(outcome.Made);
        }

        Assert.Equal(tried.Length, folder.Names.Count);
    }

    [Fact]
    public void An_existing_file_stays_without_force_and_is_replaced_with_it()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Of("run.svg");
        File.WriteAllText(path, "mine");
        var refused = PictureFile.Write(DosePlot.Of(SamplePictures.Full()), path, force: false);
        Assert.Contains("already exists", refused.Reason, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(path));
        Assert.NotNull(PictureFile.Write(DosePlot.Of(SamplePictures.Full()), path, force: true).Made);
        Assert.Contains("<svg", File.ReadAllText(path), StringComparison.Ordinal);
        Assert.Equal(["run.svg"], folder.Names);
    }

    [Fact]
    public void Of_many_writers_at_once_exactly_one_wins()
    {
        for (var round = 0; round < 10; round++)
        {
            OneRace();
        }
    }

    private static void OneRace()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Of("run.svg");
        var outcomes = new Outcome<string>[8];
        Parallel.For(
            0,
            outcomes.Length,
            i => outcomes[i] = PictureFile.Write(RunPlots.Of([SamplePictures.Full($"run {i}")], PlotKind.Residuals), path, force: false));
        var winner = Assert.Single(outcomes.Index(), o => o.Item.Made is not null);
        Assert.Contains($"run {winner.Index}", File.ReadAllText(path), StringComparison.Ordinal);
        Assert.Equal(["run.svg"], folder.Names);
    }

    [Theory]
    [InlineData("run.gif")]
    [InlineData("run")]
    [InlineData("svg")]
    public void Another_ending_is_refused_naming_the_three(string name)
    {
        using var folder = new TemporaryFolder();
        var refused = PictureFile.Write(DosePlot.Of(SamplePictures.Full()), folder.Of(name), force: true);
        Assert.Contains(".svg, .pdf or .png", refused.Reason, StringComparison.Ordinal);
        Assert.Empty(folder.Names);
    }

    [Theory]
    [InlineData("missing/run.svg", "does not exist")]
    [InlineData("folder.svg", "is a folder")]
    [InlineData("file.txt/run.svg", "does not exist")]
    [InlineData("nul\0l.svg", "cannot be written")]
    [InlineData("much-too-long", "cannot be written")]
    public void What_cannot_be_written_is_refused_in_one_line_and_leaves_nothing(string name, string why)
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder.Of("folder.svg"));
        File.WriteAllText(folder.Of("file.txt"), "");
        var path = folder.Of(name == "much-too-long" ? new string('n', 300) + ".svg" : name);
        var refused = PictureFile.Write(DosePlot.Of(SamplePictures.Full()), path, force: true);
        Assert.Contains(why, refused.Reason, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refused.Reason!);
        Assert.Equal(["file.txt", "folder.svg"], folder.Names);
    }

    [Fact]
    public void A_folder_that_takes_no_files_is_refused()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs a folder that even an administrator cannot write to");
        var refused = PictureFile.Write(DosePlot.Of(SamplePictures.Full()), "/proc/run.svg", force: false);
        Assert.Contains("cannot be written", refused.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void No_picture_is_a_mistake_of_the_caller()
        => Assert.Throws<ArgumentException>(() => RunPlots.Of([], PlotKind.Dose));

    [Fact]
    public void There_is_no_map_of_one_thickener()
        => Assert.Throws<ArgumentException>(() => RunPlots.Of([SamplePictures.Full()], PlotKind.Map));

    [Fact]
    public void The_dose_plot_says_what_it_shows()
    {
        var text = SvgText(SamplePictures.Full(), PlotKind.Dose);
        Assert.Contains("Quay Street glaze gel 03", text, StringComparison.Ordinal);
        Assert.Contains("Viscosity at 23.0 °C, mPa·s", text, StringComparison.Ordinal);
        Assert.Contains("Dose of TA, g per 100 g of base (%)", text, StringComparison.Ordinal);
        Assert.Contains("target 12\u2009000 mPa·s (10\u2009200 to 13\u2009800)", text, StringComparison.Ordinal);
        Assert.Contains("more adds little body, only water sensitivity and cost", text, StringComparison.Ordinal);
        Assert.Contains("next: to 2.40 %", text, StringComparison.Ordinal);
        string[] words =
        [
            "reading", "doubted reading", "settled value, 90 %", "median curve", "band of the mean, 90 %", "band of a reading, 90 %",
        ];
        foreach (var word in words)
        {
            Assert.Contains(word, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_axis_is_marked_at_one_two_and_five_of_each_decade_when_it_is_short()
    {
        var text = SvgText(SamplePictures.Full(), PlotKind.Dose);
        Assert.All(
            new[] { "1\u2009000", "2\u2009000", "5\u2009000", "10\u2009000" },
            tick => Assert.Contains($" {tick} ", text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_settling_plot_names_each_step_by_its_dose()
    {
        var text = SvgText(SamplePictures.Full(), PlotKind.Settling);
        Assert.All(
            new[] { "0.00 %", "0.50 %", "1.20 %", "1.80 %", "Standing time since stirring ended, s", "settled value" },
            w => Assert.Contains(w, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_without_a_wait_is_said_to_be_missing()
        => Assert.Contains(
            "1 reading without a wait not shown", SvgText(SamplePictures.OneReading(), PlotKind.Settling), StringComparison.Ordinal);

    [Fact]
    public void An_empty_run_says_so()
    {
        Assert.Contains("nothing to show yet", SvgText(SamplePictures.Empty(), PlotKind.Dose), StringComparison.Ordinal);
        Assert.Contains("nothing to show yet", SvgText(SamplePictures.Empty(), PlotKind.Settling), StringComparison.Ordinal);
        Assert.Contains("nothing to show yet", SvgText(SamplePictures.Empty(), PlotKind.Residuals), StringComparison.Ordinal);
    }

    [Fact]
    public void Several_runs_stand_in_one_legend()
    {
        var text = SvgText(SamplePictures.Several(6), PlotKind.Dose);
        Assert.All(Enumerable.Range(1, 6), i => Assert.Contains($"glaze gel 0{i}", text, StringComparison.Ordinal));
        Assert.Contains("6 runs", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hostile_name_is_shown_as_text()
    {
        var text = SvgText(SamplePictures.Full("Гель <b>&\"x\"\u0007\u001b[31m a^{2} \u202Eend \uD800"), PlotKind.Dose);
        Assert.Contains("Гель <b>&\"x\" [31m a^\u200B{2} end", text, StringComparison.Ordinal);
        Assert.DoesNotContain(text, c => char.IsControl(c) || c is '\u202E');
    }

    [Fact]
    public void The_png_has_its_signature_and_size()
    {
        using var folder = new TemporaryFolder();
        var bytes = Bytes(folder, "a.png", nameof(PlotKind.Dose), SamplePictures.Full());

        // Signature and IHDR: W3C, Portable Network Graphics (PNG) Specification, 5.2 and 11.2.2.
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], bytes[..8]);
        Assert.Equal(
            (1800, 1300), (BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(20))));
    }

    [Fact]
    public void The_pdf_carries_a_fixed_date_and_its_fonts()
    {
        using var folder = new TemporaryFolder();
        var text = Encoding.Latin1.GetString(Bytes(folder, "a.pdf", nameof(PlotKind.Dose), SamplePictures.Full()));
        Assert.StartsWith("%PDF-", text, StringComparison.Ordinal);
        Assert.Contains("/CreationDate (D:20000101000000", text, StringComparison.Ordinal);
        Assert.Contains("/ModDate (D:20000101000000", text, StringComparison.Ordinal);
        Assert.Contains("/FontFile2", text, StringComparison.Ordinal);
    }

    /// <summary>
    /// ISO 32000-1, 9.6.4: the name of a subset font begins with six letters and a plus sign; 7.5.4: the table says where each object
    /// begins.
    /// </summary>
    [Theory]
    [InlineData(nameof(PlotKind.Dose))]
    [InlineData(nameof(PlotKind.Settling))]
    [InlineData(nameof(PlotKind.Residuals))]
    public void The_pdf_holds_the_characters_shown_and_no_more(string kind)
    {
        using var folder = new TemporaryFolder();
        var bytes = Bytes(folder, "a.pdf", kind, SamplePictures.Full());
        Assert.InRange(bytes.Length, 5_000, 100_000);
        var text = Encoding.Latin1.GetString(bytes);
        var names = Regex.Matches(text, "/(BaseFont|FontName) /(?<name>[^ \n]+)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5))
            .Select(m => m.Groups["name"].Value).ToArray();
        Assert.NotEmpty(names);
        Assert.All(names, n => Assert.Matches("^[A-Z]{6}\\+", n));
        Assert.Equal(names.Length, 3 * names.Distinct(StringComparer.Ordinal).Count());
        var table = int.Parse(
            text[(text.LastIndexOf("startxref\n", StringComparison.Ordinal) + 10)..].Split('\n')[0],
            System.Globalization.CultureInfo.InvariantCulture);
        Assert.StartsWith("xref\n", text[table..], StringComparison.Ordinal);
        var places = Regex.Matches(text[table..], "(?<place>[0-9]{10}) 00000 n ", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5))
            .Select(m => int.Parse(m.Groups["place"].Value, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        Assert.All(places.Index(), p => Assert.StartsWith($"{p.Index + 1} 0 obj\n", text[p.Item..], StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_no_such_pdf_stays_as_it_is()
    {
        var other = Encoding.ASCII.GetBytes("%PDF-1.4\nsomething else\n%%EOF\n");
        Assert.Same(other, PdfFonts.Subset(other));
    }

    private static byte[] Bytes(TemporaryFolder folder, string name, string kind, RunPicture picture)
    {
        var written = PictureFile.Write(RunPlots.Of([picture], Enum.Parse<PlotKind>(kind)), folder.Of(name), force: false);
        return File.ReadAllBytes(written.Made!);
    }

    private static string SvgText(RunPicture picture, PlotKind kind) => SvgText([picture], kind);

    /// <summary>All texts of the drawing in their order, a space between.</summary>
    private static string SvgText(IReadOnlyList<RunPicture> pictures, PlotKind kind)
    {
        using var folder = new TemporaryFolder();
        Assert.NotNull(PictureFile.Write(RunPlots.Of(pictures, kind), folder.Of("a.svg"), force: false).Made);
        using var stream = File.OpenRead(folder.Of("a.svg"));
        using var reader = System.Xml.XmlReader.Create(
            stream, new() { DtdProcessing = System.Xml.DtdProcessing.Ignore, XmlResolver = null });
        var texts = XDocument.Load(reader).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value);
        return " " + string.Join(' ', texts) + " ";
    }
}
