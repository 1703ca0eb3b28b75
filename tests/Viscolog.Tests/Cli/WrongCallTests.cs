using Viscolog.Tests.Support;
using Viscolog.Text;

namespace Viscolog.Tests.Cli;

/// <summary>What bad calls and bad input get: one line on standard error, nothing on standard output, the right exit code.</summary>
public sealed class WrongCallTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("viscolog-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("advise")]
    [InlineData("advice", "x.csv")]
    [InlineData("advise", "x.csv", "--risk", "1.5 g")]
    [InlineData("advise", "x.csv", "--risk", "51")]
    [InlineData("advise", "x.csv", "--target", "12000 grams")]
    [InlineData("advise", "x.csv", "--target", "12,000")]
    [InlineData("advise", "x.csv", "--target", "NaN")]
    [InlineData("plot", "x.csv")]
    [InlineData("plot", "x.csv", "-o", "y.svg", "--kind", "pie")]
    public void A_wrong_call_ends_with_1(params string[] args) => Refused(Called.With(args), 1);

    /// <summary>What the screens take, options take: the same reading of numbers.</summary>
    [Theory]
    [InlineData("--target", "12000", "--target", "12 Pa.s")]
    [InlineData("--target", "12000", "--target", "12 000 cP")]
    [InlineData("--risk", "1.5", "--risk", "1,5 %")]
    [InlineData("--what-if", "14.1747615625", "--what-if", "0,5 oz")]
    public void Options_take_numbers_as_the_screens_do(string option, string plain, string other, string typed)
    {
        var sample = Checkout.Sample("lantern-gel-07.csv");
        Assert.Equal(Called.With("advise", sample, option, plain).Output, Called.With("advise", sample, other, typed).Output);
    }

    /// <summary>85 KU are 1000 mPa·s by the same conversion that <c>convert --method krebs 85</c> makes.</summary>
    [Fact]
    public void A_target_may_be_stated_in_what_the_run_s_method_shows()
    {
        var paint = Checkout.Sample("methods/flat-paint-krebs.csv");
        Assert.Contains("target 1\u2009000 mPa·s", Called.With("advise", paint, "--target", "85 KU").Output, StringComparison.Ordinal);
        var gel = Checkout.Sample("lantern-gel-07.csv");
        var refusal = Refused(Called.With("advise", gel, "--target", "85 KU"), 1);
        Assert.Contains("--target: read the unit 'KU', expected mPa·s", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_ends_with_2()
        => Assert.Contains("none.csv", Refused(Called.With("advise", Path.Combine(_folder, "none.csv")), 2), StringComparison.Ordinal);

    [Fact]
    public void A_bad_cell_is_named_with_line_column_and_what_is_expected()
    {
        var file = Write("thickener,added_g,wait_s,viscosity_mpas\n,,60,85O\n");
        var line = Refused(Called.With("advise", file), 2);
        Assert.Contains("line 5, column viscosity_mpas", line, StringComparison.Ordinal);
        Assert.Contains("85O", line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_without_target_ends_with_2_and_says_where_to_put_one()
    {
        var file = Write("thickener,added_g,wait_s,viscosity_mpas\n,,60,850\n");
        Assert.Contains("target_mpas", Refused(Called.With("advise", file), 2), StringComparison.Ordinal);
        Assert.Equal(0, Called.With("advise", file, "--target", "5000").Code);
    }

    [Fact]
    public void An_unknown_column_is_a_warning_that_quiet_leaves_out()
    {
        var file = Write("thickener,added_g,wait_s,viscosity_mpas,mood\n,,60,850,good\n");
        Assert.Contains("mood", Called.With("advise", file, "--target", "5000").Error, StringComparison.Ordinal);
        Assert.Empty(Called.With("advise", file, "--target", "5000", "--quiet").Error);
    }

    [Theory]
    [InlineData("fit", "--at", "400", "beyond one and a half times")]
    [InlineData("fit", "--at", "7.6", "beyond one and a half times")]
    public void A_dose_far_outside_the_range_gets_no_forecast(string command, string option, string dose, string said)
        => Assert.Contains(
            said, Refused(Called.With(command, Checkout.Sample("lantern-gel-07.csv"), option, dose), 2), StringComparison.Ordinal);

    [Fact]
    public void A_run_without_readings_is_not_drawn()
        => Assert.Contains(
            "no reading",
            Refused(Called.With("plot", Write("thickener,added_g,wait_s,viscosity_mpas\n"), "-o", Path.Combine(_folder, "none.svg")), 2),
            StringComparison.Ordinal);

    [Fact]
    public void A_fault_of_ours_ends_with_70_and_one_line_that_says_how_to_report_it()
    {
        using var broken = new BreakingWriter();
        using var error = new StringWriter();
        using var output = new TerminalWriter(broken);
        using var errorWriter = new TerminalWriter(error);
        var code = Viscolog.Cli.CommandLine.Run(
            ["advise", Checkout.Sample("lantern-gel-07.csv"), "--history", Checkout.Sample("lantern-gel-06.csv")],
            new(output, errorWriter, new(80)),
            new(_ => null, TimeProvider.System));
        Assert.Equal(70, code);
        Assert.Contains("please report it", Assert.Single(error.ToString().TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mistyped_command_is_the_one_named()
        => Assert.Contains("advis", Refused(Called.With("advis", "x.csv"), 1), StringComparison.Ordinal);

    [Fact]
    public void A_picture_is_not_overwritten_without_force()
    {
        var picture = Path.Combine(_folder, "p.svg");
        var run = Checkout.Sample("lantern-gel-07.csv");
        Assert.Equal(0, Called.With("plot", run, "-o", picture).Code);
        var before = File.ReadAllBytes(picture);
        Assert.Contains("--force", Refused(Called.With("plot", run, "-o", picture, "--kind", "residuals"), 2), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(picture));
        Assert.Equal(0, Called.With("plot", run, "-o", picture, "--kind", "residuals", "--force").Code);
        Assert.NotEqual(before, File.ReadAllBytes(picture));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("advise", "--help")]
    [InlineData("fit", "--help")]
    [InlineData("plot", "--help")]
    [InlineData("convert", "--help")]
    [InlineData("flow", "--help")]
    public void Help_ends_with_an_example_that_works(params string[] args)
    {
        var called = Called.With(args);
        Assert.Equal((0, ""), (called.Code, called.Error));
        var example = called.Output.TrimEnd().Split('\n')[^1].Trim();
        Assert.StartsWith("dotnet run --project src/Viscolog -- ", example, StringComparison.Ordinal);
        var words = example["dotnet run --project src/Viscolog -- ".Length..].Split(' ')
            .Select(w => w.StartsWith("sample-runs/", StringComparison.Ordinal) ? Path.Combine(Checkout.Root, w) : w)
            .Select(w => w.EndsWith(".svg", StringComparison.Ordinal) ? Path.Combine(_folder, w) : w);
        Assert.Equal(0, Called.With([.. words]).Code);
    }

    /// <summary>A name is a name: what stands in a file never becomes part of a call.</summary>
    [Fact]
    public void A_name_that_begins_with_an_at_sign_reads_no_file()
    {
        var path = Path.Combine(_folder, "call.txt");
        File.WriteAllText(path, "convert 60 --method iso-2431-4\n");
        Assert.Contains("@" + path, Refused(Called.With("@" + path), 1), StringComparison.Ordinal);
        Assert.Contains("@none.csv", Refused(Called.With("advise", "@none.csv"), 2), StringComparison.Ordinal);
    }

    private static string Refused(Called called, int code)
    {
        Assert.Equal(code, called.Code);
        Assert.Empty(called.Output);
        var line = Assert.Single(called.Error.TrimEnd('\n').Split('\n'));
        Assert.DoesNotContain("   at ", line, StringComparison.Ordinal);
        Assert.NotEmpty(line.Trim());
        return line;
    }

    private string Write(string table)
    {
        var path = Path.Combine(_folder, "run.csv");
        File.WriteAllText(path, "# viscolog-run: 1\n# base_g: 100\n# thickener: T\n" + table);
        return path;
    }
}
