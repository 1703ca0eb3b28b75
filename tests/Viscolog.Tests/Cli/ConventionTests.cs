using System.CommandLine;
using System.Diagnostics;
using System.Text.Json;
using Viscolog.Cli;
using Viscolog.Tests.Support;
using Viscolog.Text;

namespace Viscolog.Tests.Cli;

/// <summary>The command line by the conventions: what was meant, standard input, one JSON object, exit codes, alike options.</summary>
public sealed class ConventionTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string> Shells => ["bash", "zsh", "fish", "pwsh"];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("there is no command 'advsie'; did you mean 'advise'? (see viscolog --help)", "advsie", "x.csv")]
    [InlineData("there is no option '--targt'; did you mean '--target'? (see viscolog advise --help)", "advise", "x.csv", "--targt", "5")]
    [InlineData("there is no option '--targt'; did you mean '--target'? (see viscolog advise --help)", "advise", "--targt=5")]
    [InlineData("there is no option '-x'; a file of such a name is meant with './' before it (see viscolog advise --help)", "advise", "-x")]
    [InlineData("there is no command 'dmeo'; did you mean 'demo'? (see viscolog practice --help)", "practice", "dmeo")]
    [InlineData("there is no command '7'; did you mean 'viscolog advise 7'? (see viscolog --help)", "7")]
    [InlineData("there is no command 'zzzzz'; see viscolog --help", "zzzzz")]
    [InlineData("there is no command 'advsie'; did you mean 'advise'? (see viscolog --help)", "help", "advsie")]
    public void What_there_is_not_is_named_with_what_was_meant(string said, params string[] args)
    {
        var called = Called.With(args);
        Assert.Equal((1, "", said + "\n"), (called.Code, called.Output, called.Error));
    }

    [Fact]
    public void A_call_makes_its_own_command_alone_and_by_its_name()
    {
        using var nowhere = new TerminalWriter(TextWriter.Null);
        Command Root(params string[] args)
            => CommandLine.Parse(args, new(nowhere, nowhere, new(80)), new(_ => null, TimeProvider.System)).RootCommandResult.Command;
        var all = Root().Subcommands.Select(c => c.Name).ToList();
        Assert.True(all.Count > 30);
        Assert.All(
            all,
            name => Assert.Equal(
                name is "help" or "completions" ? all : [name], Root(name, "-x").Subcommands.Select(c => c.Name), StringComparer.Ordinal));
    }

    [Fact]
    public void A_file_in_place_of_a_command_is_advised_on()
        => Assert.Contains(
            $"did you mean 'viscolog advise ", Called.With(Checkout.Sample("lantern-gel-07.csv")).Error, StringComparison.Ordinal);

    [Fact]
    public void The_version_is_that_of_the_program_however_it_is_asked_for()
    {
        var called = Called.With("--version");
        Assert.Matches(@"^\d+\.\d+\.\d+(\+[0-9a-f]+)?\n$", called.Output);
        Assert.Equal((0, ""), (called.Code, called.Error));
        Assert.StartsWith(
            called.Output.Trim(),
            System.Reflection.CustomAttributeExtensions.GetCustomAttribute<System.Reflection.AssemblyInformationalVersionAttribute>(
                typeof(Viscolog.Cli.CommandLine).Assembly)!.InformationalVersion,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_below_zero_are_no_options()
        => Assert.Contains("--at: read '-5'", Called.With("fit", "x.csv", "--at", "-5").Error, StringComparison.Ordinal);

    [Theory]
    [InlineData(1, "there is no command 'advsie'", "advsie", "--json")]
    [InlineData(1, "Required argument 'RUN' missing for command: 'advise'", "advise", "--json")]
    [InlineData(2, "read no such file", "advise", "none.csv", "--json")]
    [InlineData(2, "read no such file", "flow", "none.csv", "--json")]
    [InlineData(4, "there is no log in", "verify", "--json", "--log", "/nowhere/at/all")]
    [InlineData(1, "give both --low and --high", "check", "x.csv", "--low", "5", "--json")]
    public void An_error_is_one_JSON_object_too(int code, string error, params string[] args)
    {
        var root = Parse(args, code);
        Assert.Equal("viscolog.error/1", root.GetProperty("schema").GetString());
        Assert.StartsWith(error, root.GetProperty("error").GetString(), StringComparison.Ordinal);
        Assert.Equal(code, root.GetProperty("exit_code").GetInt32());
        Assert.NotEmpty(root.GetProperty("hint").GetString()!);
    }

    [Fact]
    public void A_refused_file_gives_file_line_and_column()
    {
        var file = _folder.Of("pot.csv");
        File.WriteAllText(file, "# base_g: 100\nviscosity_mpas\n85O\n");
        var root = Parse(["advise", file, "--json"], 2);
        Assert.Equal(
            (file, 3, "viscosity_mpas"),
            (root.GetProperty("file").GetString(), root.GetProperty("line").GetInt32(), root.GetProperty("column").GetString()));
        Assert.Equal("read '85O'", root.GetProperty("error").GetString());
        Assert.StartsWith("expected a number in mPa·s", root.GetProperty("hint").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_import_of_several_files_answers_with_those_that_were_refused()
    {
        File.WriteAllText(_folder.Of("bad.csv"), "# base_g: x\nviscosity_mpas\n");
        var root = Parse(
            ["import", _folder.Of("bad.csv"), Checkout.Sample("lantern-gel-06.csv"), "--log", _folder.Of("log"), "--json", "--quiet"], 2);
        Assert.Equal(1, root.GetProperty("files").GetInt32());
        Assert.Equal(1, root.GetProperty("errors")[0].GetProperty("line").GetInt32());
    }

    [Theory]
    [InlineData("report")]
    [InlineData("completions", "bash")]
    public void What_is_text_without_it_is_a_text_in_JSON(params string[] args)
    {
        string[] call = args[0] == "report" ? ["report", Checkout.Sample("lantern-gel-06.csv")] : args;
        var text = Called.With(call).Output;
        Assert.Equal(text.TrimEnd('\n'), Parse([.. call, "--json"], 0).GetProperty("text").GetString()!.TrimEnd('\n'));
    }

    [Theory]
    [InlineData("lantern-gel-21.csv", 0)]
    [InlineData("lantern-gel-22-short.csv", 3)]
    [InlineData("harbour-gel-09-over.csv", 3)]
    public void A_verdict_has_its_exit_code_and_no_certificate_is_not_0(string name, int code)
    {
        var run = Path.Combine(Checkout.Root, "sample-runs", "checks", name);
        Assert.Equal(code, Called.With("check", run).Code);
        Assert.Equal(code, Called.With("report", run, "--certificate").Code);
    }

    [Fact]
    public void Undecided_has_its_own()
    {
        var run = _folder.Of("pot.csv");
        File.WriteAllText(
            run,
            "# base_g: 100\n# thickener: TA\n# target_mpas: 9000\n"
                + "thickener,added_g,stir_s,wait_s,viscosity_mpas\nTA,2,10,600,7900\n,,,900,8000\n");
        Assert.Contains("UNDECIDED", Called.With("check", run).Output, StringComparison.Ordinal);
        Assert.Equal(5, Called.With("check", run).Code);
        Assert.Equal(3, Called.With("report", run, "--certificate").Code);
    }

    [Theory]
    [InlineData("fit")]
    [InlineData("plot", "-o", "a.svg")]
    [InlineData("batch", "--to", "5kg")]
    [InlineData("report")]
    [InlineData("check")]
    public void Target_and_history_are_taken_wherever_they_are_used(string command, params string[] more)
    {
        more = [.. more.Select(m => m == "a.svg" ? _folder.Of(m) : m)];
        var called = Called.With(
            [
                command,
                Checkout.Sample("lantern-gel-07.csv"),
                "--target",
                "4500",
                "--history",
                Checkout.Sample("lantern-gel-06.csv"),
                "--quiet",
                .. more,
            ]);
        Assert.True(called.Code is 0 or 3 or 5, called.Error);
        Assert.DoesNotContain("10 350", called.Output, StringComparison.Ordinal);
    }

    /// <summary>Without its number, what is checked is not the target that the call names.</summary>
    [Fact]
    public void A_check_goes_by_the_target_of_the_call()
    {
        var run = Path.Combine(Checkout.Root, "sample-runs", "checks", "lantern-gel-21.csv");
        Assert.Equal(3, Called.With("check", run, "--target", "20000").Code);
        Assert.Equal(1, Called.With("check", run, "--target", "20000", "--spec", "x").Code);
    }

    [Theory]
    [InlineData("report", "-o")]
    [InlineData("report", "--out")]
    [InlineData("report", "--output")]
    [InlineData("plot", "--out")]
    [InlineData("flow", "--out")]
    public void A_file_to_write_is_named_alike(string command, string option)
    {
        var input = command == "flow"
            ? Path.Combine(Checkout.Root, "sample-runs", "flow", "lantern-gel-sweep.csv")
            : Checkout.Sample("lantern-gel-06.csv");
        var file = _folder.Of(command == "report" ? "a.html" : "a.svg");
        Assert.Equal(0, Called.With(command, input, option, file, "--no-colour").Code);
        Assert.True(File.Exists(file));
    }

    [Fact]
    public void Lists_name_what_files_may_say()
    {
        Assert.Equal(Core.Measuring.Method.All.Select(m => m.Id), Names("methods"), StringComparer.Ordinal);
        Assert.Equal(Core.Curves.Shapes.All.Select(m => m.Name), Names("shapes"), StringComparer.Ordinal);
        foreach (var chemistry in Names("chemistries"))
        {
            File.WriteAllText(
                _folder.Of("pot.csv"), $"# base_g: 1\n# target_mpas: 9000\n# thickener: TA; chemistry={chemistry}\nviscosity_mpas\n");
            Assert.Equal(0, Called.With("advise", _folder.Of("pot.csv")).Code);
        }

        IEnumerable<string> Names(string kind)
        {
            var listed = Called.With(kind).Output;
            string[] names =
            [
                .. Parse([kind, "--json"], 0).GetProperty("names").EnumerateArray().Select(n => n.GetProperty("name").GetString()!),
            ];
            Assert.All(names, n => Assert.Contains(n, listed, StringComparison.Ordinal));
            return names;
        }
    }

    [Fact]
    public void Help_in_words_is_the_help_of_the_option()
        => Assert.Equal(Called.With("practice", "demo", "--help"), Called.With("help", "practice", "demo"));

    /// <summary>The scripts ask the program itself; here what it answers them.</summary>
    [Theory]
    [InlineData("adv", "advise")]
    [InlineData("practice d", "demo")]
    [InlineData("advise --ta", "--target")]
    [InlineData("completions f", "fish")]
    public void Completions_come_from_the_commands_themselves(string line, string completed)
        => Assert.Contains(completed, Called.With($"[suggest:{line.Length}]", line).Output.Split('\n'), StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Shells))]
    public void A_script_of_completions_asks_for_them(string shell)
    {
        var script = Called.With("completions", shell);
        Assert.Equal(0, script.Code);
        Assert.Contains("[suggest:", script.Output, StringComparison.Ordinal);
        Assert.Equal(1, Called.With("completions", "csh").Code);
    }

    [Fact]
    public void Bash_completes_with_its_script()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && File.Exists("/bin/bash"), "no bash here");
        var program = Path.Combine(AppContext.BaseDirectory, "viscolog.dll");
        const string Asked = "COMP_LINE='viscolog practice de'; COMP_POINT=20; COMP_WORDS=(viscolog practice de); COMP_CWORD=2; "
            + "_viscolog; echo \"${COMPREPLY[@]}\"";
        var (code, output) = Shell($"viscolog() {{ dotnet '{program}' \"$@\"; }}; eval \"$(viscolog completions bash)\"; {Asked}");
        Assert.Equal((0, "demo\n"), (code, output));
    }

    [Theory]
    [InlineData("advise - --quiet < RUN", 0, "ADD 0.94 g")]
    [InlineData("import - --log LOG < RUN", 0, "1 new run")]
    [InlineData("echo nothing | PROGRAM advise - 2>&1", 2, "standard input: read no base_g")]
    [InlineData("advise - 2>&1 <&-", 1, "standard input is closed; name a file in place of '-'")]
    public void A_dash_is_standard_input(string call, int code, string said)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the shell's words");
        var program = "dotnet " + Path.Combine(AppContext.BaseDirectory, "viscolog.dll");
        var line = (
            call.Contains("PROGRAM", StringComparison.Ordinal)
                ? call.Replace("PROGRAM", program, StringComparison.Ordinal)
                : $"{program} {call}")
            .Replace("RUN", Checkout.Sample("lantern-gel-07.csv"), StringComparison.Ordinal)
            .Replace("LOG", _folder.Of("log"), StringComparison.Ordinal);
        var (ended, output) = Shell(line);
        Assert.Equal(code, ended);
        Assert.Contains(said, output, StringComparison.Ordinal);
    }

    private static (int Code, string Output) Shell(string line)
    {
        var start = new ProcessStartInfo("bash", ["-c", line]) { UseShellExecute = false, RedirectStandardOutput = true };
        using var shell = Process.Start(start)!;
        var output = shell.StandardOutput.ReadToEnd();
        shell.WaitForExit();
        return (shell.ExitCode, output);
    }

    private static JsonElement Parse(string[] args, int code)
    {
        var called = Called.With(args);
        Assert.Equal(code, called.Code);
        using var document = JsonDocument.Parse(called.Output);
        return document.RootElement.Clone();
    }
}
