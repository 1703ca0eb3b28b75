using System.Diagnostics;
using Viscolog.Cli.Calls;
using Viscolog.Output;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Output;

/// <summary>Names under which nothing can be written, folders, and patterns of names.</summary>
public sealed class NamedFileTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>A device that is replaced by a file is lost to the whole machine.</summary>
    [Fact]
    public void What_is_no_file_is_never_replaced_even_where_that_is_asked_for()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a pipe with a name is made here as on Linux");
        var pipe = _folder.Of("pipe.csv");
        using (var made = Process.Start("mkfifo", [pipe]))
        {
            made.WaitForExit();
        }

        Assert.Contains("not a file", NamedFile.Write(pipe, force: true, () => [1]).Reason, StringComparison.Ordinal);
        var call = Called.In(Logged(), "export", "1", "-o", pipe, "--force");
        Assert.Equal((2, false), (call.Code, FileKind.IsRegular(pipe)));
        Assert.Contains("not a file", call.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData(@"\\.\NUL")]
    public void The_name_of_a_drive_or_a_device_is_told_as_such(string name)
        => Assert.Contains("device or a drive", NamedFile.Obstacle(name)!.Value.Reason, StringComparison.Ordinal);

    [Fact]
    public void A_folder_is_made_in_one_that_is_there_and_nowhere_else()
    {
        Assert.Null(NamedFile.FolderMade(_folder.Of("new")));
        Assert.True(Directory.Exists(_folder.Of("new")));
        Assert.Null(NamedFile.FolderMade(Path.GetPathRoot(_folder.FullPath)!));
        Assert.Contains("first", NamedFile.FolderMade(Path.Combine(_folder.Of("none"), "deep"))!.Value.Reason, StringComparison.Ordinal);
    }

    /// <summary>Shells of Windows leave patterns to the program; what stands for a text, an option or nothing stays as it is.</summary>
    [Fact]
    public void A_pattern_names_the_files_that_fit_it()
    {
        string[] names = ["b.csv", "A.csv", "c.txt"];
        Array.ForEach(names, n => File.WriteAllText(_folder.Of(n), ""));
        Assert.Equal([_folder.Of("A.csv"), _folder.Of("b.csv")], WindowsConsole.Files(_folder.Of("*.csv")), StringComparer.Ordinal);
        Assert.Equal(2, WindowsConsole.Files(_folder.Of("?.csv")).Count());
        string[] kept = [_folder.Of("*.pdf"), "note=why?", "--x=*", "plain.csv", Path.Combine(_folder.Of("none"), "*.csv")];
        Assert.All(kept, k => Assert.Equal(k, Assert.Single(WindowsConsole.Files(k))));
    }

    private string Logged()
    {
        var log = _folder.Of("log");
        Assert.Equal(0, Called.In(log, "import", Checkout.Sample("lantern-gel-07.csv")).Code);
        return log;
    }
}
