using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.Tests.RunFiles;

public sealed class FileSystemTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_file_on_disk_is_read()
    {
        var path = Path.Combine(_folder, "pot.csv");
        File.WriteAllText(path, "# base_g: 120\nnote\nstirred\n");
        Assert.Equal(120, Assert.IsType<TableOutcome<RunFile>.Read>(RunFileReader.Read(path)).File.Run.BaseMass.Grams);
    }

    [Fact]
    public void A_folder_is_refused()
        => Assert.Equal($"{_folder}: read a folder, expected a run file; name one of the files in it", Refusal(_folder));

    [Fact]
    public void A_missing_file_is_refused()
    {
        var path = Path.Combine(_folder, "none.csv");
        Assert.Equal($"{path}: read no such file, expected a run file; check the path", Refusal(path));
        Assert.Equal(": read no such file, expected a run file; check the path", Refusal(""));
    }

    [Fact]
    public void A_file_that_another_program_holds_is_refused()
    {
        var path = Path.Combine(_folder, "held.csv");
        using var holder = new FileStream(path, FileMode.Create, FileAccess.ReadWrite, FileShare.None);
        Assert.StartsWith($"{path}: read nothing (", Refusal(path), StringComparison.Ordinal);
        Assert.EndsWith("), expected a file that may be read; check its permissions", Refusal(path), StringComparison.Ordinal);
    }

    [Theory]
    [
        InlineData(
            new byte[] { (byte)'#', (byte)'\r', (byte)'\n', (byte)'#', (byte)'\r', 0xE4 },
            "pot.csv, line 3: read byte 0xE4, expected text in UTF-8; save the file again as CSV in UTF-8"),
    ]
    [
        InlineData(
            new byte[] { 0xFF, 0xFE, (byte)'#', 0, 0, 0xD8 },
            "pot.csv: read text in UTF-16 with letters cut in half, expected text in UTF-8; save the file again as CSV in UTF-8"),
    ]
    public void Bytes_that_are_not_UTF_8_are_refused(byte[] bytes, string expected)
        => Assert.Equal(expected, Assert.IsType<TableOutcome<RunFile>.Refused>(RunFileReader.Parse("pot.csv", bytes)).Refusal.Text);

    [Fact]
    public void A_refusal_is_one_line_whatever_the_file_is_called()
        => Assert.Equal("a b.csv: read x y, expected z", new Refusal("a\nb.csv", null, null, "x\u2028y", "z").Text);

    private static string Refusal(string path) => Assert.IsType<TableOutcome<RunFile>.Refused>(RunFileReader.Read(path)).Refusal.Text;
}
