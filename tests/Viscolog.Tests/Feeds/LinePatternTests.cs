using System.Globalization;
using System.Text;
using CsCheck;
using Viscolog.Feeds;
using Viscolog.RunFiles;

namespace Viscolog.Tests.Feeds;

/// <summary>Lines of instruments: what they say by a pattern, and that nothing else is ever made of them.</summary>
public sealed class LinePatternTests
{
    [Theory]
    [InlineData("viscosity_mpas=1", "8420", "viscosity_mpas=8420")]
    [InlineData("viscosity_mpas=1", "8420 mPa.s", "viscosity_mpas=8420")]
    [InlineData("viscosity_mpas=1", "8420mPas", "viscosity_mpas=8420")]
    [InlineData("viscosity_mpas=1/2", "8.42 Pa.s", "viscosity_mpas=8420")]
    [InlineData("viscosity_mpas=1 P", "84.2", "viscosity_mpas=8420")]
    [InlineData("viscosity_mpas=2; temp_c=4", "V=, 8420 ,T=, 23.1", "viscosity_mpas=8420 temp_c=23.1")]
    [InlineData("torque_pct=1; rpm=2", "48.2% 20rpm", "torque_pct=48.2 rpm=20")]
    [InlineData("temp_c=1/2", "73.4 F", "temp_c=23")]
    [InlineData("temp_c=1", "-4.5", "temp_c=-4.5")]
    [InlineData("ph=2", "pH 8.93", "ph=8.93")]
    [InlineData("ku=1", "92.5 KU", "ku=92.5")]
    [InlineData("cup_s=1", "38.2 sec", "cup_s=38.2")]
    [InlineData("added_g=3/4; separator=comma", "ST,NT,+   12.34,g", "added_g=12.34")]
    [InlineData("added_g=3; separator=comma", "ST,NT,+   12.34 g", "added_g=12.34")]
    [InlineData("added_g=1/2", "+ 0.0123 kg", "added_g=12.3")]
    [InlineData("viscosity_mpas=1; temp_c=2; decimal=comma; separator=semicolon", "8420,5;23,1", "viscosity_mpas=8420.5 temp_c=23.1")]
    [InlineData("viscosity_mpas=4-11; temp_c=13-17", "VI:  8420.5T 23.1", "viscosity_mpas=8420.5 temp_c=23.1")]
    [InlineData("viscosity_mpas=1", "\u0002 8420\u0003", "viscosity_mpas=8420")]
    [InlineData("viscosity_mpas=1", "8.42E+3", "viscosity_mpas=8420")]
    public void A_line_says_what_its_pattern_says(string pattern, string line, string said)
        => Assert.Equal(said, string.Join(' ', Assert.IsType<LineOutcome.Understood>(Read(pattern, line)).Words));

    [Theory]
    [InlineData("viscosity_mpas=1", "eight", "expected a number")]
    [InlineData("viscosity_mpas=1", "8420 8420x", null)]
    [InlineData("viscosity_mpas=1", "8420x", "read the unit 'x'")]
    [InlineData("viscosity_mpas=1", "23.1 C", null)]
    [InlineData("viscosity_mpas=1/2", "23.1 C", "read the unit 'C'")]
    [InlineData("viscosity_mpas=2", "8420", "too short")]
    [InlineData("viscosity_mpas=1", "-8420", "expected a number in mPa·s")]
    [InlineData("viscosity_mpas=1; separator=space", "12,000", "expected a number")]
    [InlineData("viscosity_mpas=1; decimal=comma; separator=space", "12.000", "expected a number")]
    [InlineData("viscosity_mpas=1", "84\u000120", "not a line of text")]
    [InlineData("viscosity_mpas=1", "84\u001b[2J20", "not a line of text")]
    [InlineData("viscosity_mpas=2", " \u001b[0m9,9mPa.s", "not a line of text")]
    [InlineData("viscosity_mpas=1", "1e999", "expected a number")]
    [InlineData("viscosity_mpas=1; checksum=xor", "8420*00", "checksum")]
    public void What_a_line_does_not_say_for_certain_is_not_read(string pattern, string line, string? reason)
    {
        if (Read(pattern, line) is LineOutcome.Misread misread)
        {
            Assert.Contains(reason!, misread.Reason, StringComparison.Ordinal);
        }
        else
        {
            Assert.Null(reason);
        }
    }

    [Theory]
    [InlineData("viscosity_mpas=2; stable=1:ST", "ST 8420", true)]
    [InlineData("viscosity_mpas=2; stable=1:ST", "US 8420", false)]
    [InlineData("viscosity_mpas=2; unstable=1:US", "US 8420", false)]
    [InlineData("viscosity_mpas=2; unstable=1:US", "ST 8420", true)]
    [InlineData("viscosity_mpas=2", "US 8420", null)]
    public void A_line_says_whether_the_value_has_come_to_rest(string pattern, string line, bool? isStable)
        => Assert.Equal(isStable, Assert.IsType<LineOutcome.Understood>(Read(pattern, line)).IsStable);

    [Theory]
    [InlineData("viscosity_mpas=1; skip=#,READY", "# begun")]
    [InlineData("viscosity_mpas=1; skip=#,READY", "READY")]
    [InlineData("viscosity_mpas=1", " \t\u0003")]
    public void Lines_that_say_nothing_are_passed_over(string pattern, string line)
        => Assert.IsType<LineOutcome.Skipped>(Read(pattern, line));

    /// <summary>
    /// NMEA 0183's exclusive or, of a sentence that documents of the standard commonly show (from memory); the check value of CRC-16/MODBUS
    /// for "123456789", 0x4B37, of the catalogue of parametrised CRC algorithms (from memory).
    /// </summary>
    [Fact]
    public void Checksums_are_those_of_their_standards()
    {
        var sentence = "$GPGLL,5300.97914,N,00259.98174,E,125926,A*28";
        Assert.True(LineSums.Holds(LineChecksum.Xor, ref sentence));
        Assert.Equal("GPGLL,5300.97914,N,00259.98174,E,125926,A", sentence);
        Assert.Equal(0x4B37, LineSums.Crc("123456789"u8));
    }

    /// <summary>A digit that the wire turned is found by each kind of checksum.</summary>
    [Theory]
    [InlineData("xor")]
    [InlineData("sum")]
    [InlineData("crc")]
    public void A_turned_digit_is_found(string kind)
    {
        var pattern = LinePattern.Read($"viscosity_mpas=1; temp_c=2; checksum={kind}", out _)!;
        var (text, sum) = ("8420 23.1", 0);
        foreach (var b in Encoding.ASCII.GetBytes(text))
        {
            sum = kind == "xor" ? sum ^ b : sum + b;
        }

        var end = kind switch
        {
            "xor" => string.Create(CultureInfo.InvariantCulture, $"*{sum:X2}"),
            "sum" => string.Create(CultureInfo.InvariantCulture, $"{sum & 0xFF:X2}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{LineSums.Crc(Encoding.ASCII.GetBytes(text)):X4}"),
        };
        Assert.IsType<LineOutcome.Understood>(pattern.Read(text + end));
        for (var i = 0; i < text.Length; i++)
        {
            var turned = text.ToCharArray();
            turned[i]++;
            Assert.IsType<LineOutcome.Misread>(pattern.Read(new string(turned) + end));
        }
    }

    [Theory]
    [InlineData("viscosity_mpas=2/3; temp_c=4-9; separator=comma; decimal=point; stable=1:ST; skip=#; checksum=crc; ask=READ?; every=2")]
    [InlineData("added_g=1 kg; unstable=2:M")]
    public void A_pattern_reads_back_as_it_was_written(string text)
    {
        var once = LinePattern.Read(text, out _)!.Show();
        Assert.Equal(once, LinePattern.Read(once, out _)!.Show());
    }

    /// <summary>What a simulated instrument says by a pattern is understood by that pattern.</summary>
    [Theory]
    [InlineData("viscosity_mpas=1/2; temp_c=3; stable=4:S")]
    [InlineData("viscosity_mpas=3 Pa·s; temp_c=1; decimal=comma; separator=semicolon; unstable=2:M; checksum=crc")]
    [InlineData("temp_c=2; viscosity_mpas=5/6; separator=comma; checksum=xor")]
    [InlineData("viscosity_mpas=1; temp_c=2; separator=tab; checksum=sum")]
    public void What_a_pattern_says_it_understands(string text)
    {
        var pattern = LinePattern.Read(text, out _)!;
        Gen.Select(Gen.Int[1, 9_999_999], Gen.Int[-200, 900], Gen.Bool).Sample((body, temperature, isStable) =>
        {
            var line = pattern.Write(c => c == Columns.Temperature ? temperature / 10.0 : body, isStable)!;
            var read = Assert.IsType<LineOutcome.Understood>(pattern.Read(line));
            Assert.Equal(body, read.Of(Columns.Values[0].Column)!.Value, pattern.Pieces.Any(p => p.Unit is not null) ? 0.06 : 1e-6);
            Assert.Equal(temperature / 10.0, read.Of(Columns.Temperature)!.Value, 1e-6);
            Assert.True(read.IsStable is null || read.IsStable == isStable);
        });
    }

    [Theory]
    [InlineData("", "such as viscosity_mpas=1")]
    [InlineData("viscosity_mpas=0", "expected FIELD")]
    [InlineData("viscosity_mpas=9-3", "expected FIELD")]
    [InlineData("viscosty_mpas=1", "expected viscosity_mpas?")]
    [InlineData("viscosity_mpas=1; viscosity_mpas=2", "once")]
    [InlineData("viscosity_mpas=1; separator=star", "one of any, comma")]
    [InlineData("viscosity_mpas=1; every=0", "seconds, from 0.1")]
    [InlineData("viscosity_mpas=1; stable=ST", "FIELD:TEXT")]
    public void A_pattern_that_is_none_is_refused_with_what_to_write(string text, string said)
    {
        Assert.Null(LinePattern.Read(text, out var error));
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    /// <summary>Whatever comes: an outcome, no exception; and what is understood lies within its column's range.</summary>
    [Theory]
    [InlineData("viscosity_mpas=2/3; temp_c=4; stable=1:ST")]
    [InlineData("added_g=5-14; separator=comma; decimal=comma; checksum=sum")]
    [InlineData("torque_pct=1; rpm=2; checksum=xor")]
    public void Garbage_is_never_a_reading_out_of_range(string text)
    {
        var pattern = LinePattern.Read(text, out _)!;
        var many = Environment.GetEnvironmentVariable("VISCOLOG_LONG") is not null ? 1_000_000 : 20_000;
        string[] words =
        [
            "ST",
            "US",
            "8420",
            "+",
            "-",
            " ",
            ",",
            ";",
            "\t",
            "mPa.s",
            "°C",
            "1e308",
            "0",
            ".",
            "9,9",
            "\u001b[0m",
            "\ufffd",
            "ÿ",
            "*1F",
            "KU",
            "NaN",
        ];
        Gen.Select(Gen.Int[0, words.Length - 1].Array[0, 12], Gen.String[0, 4]).Sample(
            (parts, noise) =>
            {
                var line = string.Concat(parts.Select(p => words[p])) + noise;
                if (pattern.Read(line) is LineOutcome.Understood read)
                {
                    Assert.All(read.Values, v => Assert.True(v.Column.Range!.Allows(v.Value), line));
                    Assert.DoesNotContain("\u001b", line, StringComparison.Ordinal);
                }
            },
            iter: many);
    }

    /// <summary>However a stream is cut into pieces, the lines are the same.</summary>
    [Fact]
    public void Pieces_of_a_stream_make_the_lines_of_the_whole()
        => Gen.Select(Gen.Byte.Array[0, 300], Gen.Int[1, 40]).Sample((bytes, size) =>
        {
            var whole = new LineCutter().Cut(bytes).ToList();
            var cutter = new LineCutter();
            Assert.Equal(whole, bytes.Chunk(size).SelectMany(c => cutter.Cut(c).ToList()).ToList(), StringComparer.Ordinal);
        });

    [Fact]
    public void A_line_without_an_end_holds_no_more_memory_than_a_line()
    {
        var cutter = new LineCutter();
        Assert.All(Enumerable.Range(0, 1000), _ => Assert.Empty(cutter.Cut(new byte[4096])));
        Assert.True(cutter.IsNoise);
        Assert.True(cutter.Drop().Length < LinePattern.LongestLine + 10);
    }

    [Theory]
    [InlineData("8420 23.1|9000 22.9", "8420 mPa·s at 23.1 °C|9000 mPa·s at 22.9 °C", "viscosity_mpas=1; temp_c=2")]
    [InlineData("ST,8.42,Pa.s|ST,9.1,Pa.s|US,12,Pa.s", "8420 mPa·s|9.1 Pa·s|12000 cP", "viscosity_mpas=2/3")]
    [InlineData("1 8.42|2 9.1", "8420 mPa·s|9100 mPa·s", "viscosity_mpas=2 Pa·s")]
    [InlineData("N + 12.34 g|N - 0.5 g", "12.34 g|-0.5 g", null)]
    [InlineData("N + 12.34 g|N + 0.5 g", "12.34 g|0.5 g", "added_g=2/3")]
    [InlineData("8420,5;23,1|9000,0;22,9", "8420.5 mPa·s, 23.1 °C|9000 mPa·s, 22.9 °C", "viscosity_mpas=1; temp_c=2; decimal=comma")]
    [InlineData("48.2 20 pH 8.9", "48.2 %, 20 rpm, pH 8.9", "torque_pct=1; rpm=2; ph=4")]
    public void A_pattern_is_learned_from_lines_and_what_they_mean(string lines, string meanings, string? pattern)
    {
        var examples = lines.Split('|').Zip(meanings.Split('|'), (l, m) => new LineExample(l, m)).ToList();
        Assert.Equal(pattern, LineLessons.Learn(examples, out var error)?.Show());
        Assert.Equal(pattern is null, error is not null);
    }

    [Theory]
    [InlineData("20 20", "20 °C", "fields 1 and 2 both fit")]
    [InlineData("8420", "9000 mPa·s", "no field of the lines says")]
    [InlineData("8420", "8420", "expected a number with its unit")]
    [InlineData("8420 23|8500 23", "8420 mPa·s|23 °C", "the same quantities")]
    public void What_can_not_be_learned_is_said(string lines, string meanings, string said)
    {
        var examples = lines.Split('|').Zip(meanings.Split('|'), (l, m) => new LineExample(l, m)).ToList();
        Assert.Null(LineLessons.Learn(examples, out var error));
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    /// <summary>What was learned from three lines says of every other what it means.</summary>
    [Fact]
    public void What_was_learned_holds_for_other_lines()
        => Gen.Select(Gen.Double[1, 99_999].Array[5], Gen.Double[10, 40].Array[5], Gen.Int[0, 3]).Sample((bodies, temperatures, form) =>
        {
            var lines = bodies.Zip(temperatures, (b, t) => Line(form, Math.Round(b, 1), Math.Round(t, 2))).ToList();
            var meanings = bodies.Zip(
                temperatures, (b, t) => FormattableString.Invariant($"{Math.Round(b, 1)} mPa·s at {Math.Round(t, 2)} °C")).ToList();
            if (LineLessons.Learn([.. lines.Zip(meanings, (l, m) => new LineExample(l, m)).Take(3)], out _) is not { } pattern)
            {
                return;
            }

            for (var i = 3; i < 5; i++)
            {
                var read = Assert.IsType<LineOutcome.Understood>(pattern.Read(lines[i]));
                Assert.Equal(Math.Round(bodies[i], 1), read.Of(Columns.Values[0].Column)!.Value, 1e-6 * bodies[i]);
                Assert.Equal(Math.Round(temperatures[i], 2), read.Of(Columns.Temperature)!.Value, 1e-6);
            }
        });

    private static string Line(int form, double body, double temperature) => form switch
    {
        0 => FormattableString.Invariant($"{body} {temperature}"),
        1 => FormattableString.Invariant($"A;{temperature};{body} mPa.s"),
        2 => FormattableString.Invariant($"V {body / 1000} Pa.s T {temperature} C"),
        _ => FormattableString.Invariant($"{temperature}\t{body}\tOK"),
    };

    private static LineOutcome Read(string pattern, string line)
    {
        var read = LinePattern.Read(pattern, out var error);
        Assert.Null(error);
        return read!.Read(line);
    }
}
