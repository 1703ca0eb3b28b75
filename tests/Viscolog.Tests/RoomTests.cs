using System.Text.RegularExpressions;
using Viscolog.FlowFiles;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.RunFiles;
using Viscolog.Tests.Support;

namespace Viscolog.Tests;

/// <summary>The rooms of Core and the shell, and what may pass between them, as the compiled code has it.</summary>
public sealed class RoomTests
{
    /// <summary>The floors, the highest first. A room uses only rooms on floors below its own.</summary>
    private static readonly string[][] Floors =
    [
        ["Cli", "Tui"],
        ["Cli.Commands", "Cli.Practice", "Cli.Entries", "Cli.Guide", "Cli.Share", "Tui.Runs"],
        ["Cli.Calls"],
        ["Cli.Json"],
        ["Tui.Bench"],
        ["Tui.Batches", "Tui.Practice"],
        ["Tui.Materials", "Tui.Charts", "Tui.Papers", "Tui.RunHeaders"],
        ["Tui.Pattern"],
        ["Sharing"],
        ["Labels"],
        ["Reports", "Store"],
        ["Store.Copy"],
        ["Store.Journal"],
        ["Plots.Oxy", "Plots.Characters"],
        ["Plots", "MaterialFiles", "OilFiles", "FlowFiles", "TrendFiles", "PracticeFiles"],
        ["Feeds"],
        ["Typing"],
        ["RunFiles", "Wording"],
        ["Core.Practice"],
        ["Core.Checking"],
        ["Core.Batches", "Core.Charting"],
        ["Core.Advising"],
        ["Core.Limits"],
        ["Core.Inference"],
        ["Core.Sampling"],
        ["Core.Observing"],
        ["Core.Curves", "Core.Flow"],
        ["Core.Settling", "Core.Fitting"],
        ["Core.Pots"],
        ["Core.Measuring"],
        ["Core.Quantities"],
        ["Tables"],
        ["Sheets"],
        ["Output"],
        ["Text"],
        ["Languages"],
    ];

    [Fact]
    public void Every_room_has_its_floor_and_every_floor_its_rooms()
        => Assert.Equal(
            Floors.SelectMany(f => f).Order(StringComparer.Ordinal),
            CompiledCode.Types.Select(CompiledCode.Room).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

    [Fact]
    public void Rooms_use_only_what_stands_below_them()
        => None(CompiledCode.Crossings
            .Where(c => Floor(c.Used) <= Floor(c.User))
            .Select(c => $"{c.User.FullName} uses {c.Used.FullName}"));

    /// <summary>Whatever the floors say: no room uses one that uses it, straight or round about.</summary>
    [Fact]
    public void No_two_rooms_use_one_another()
    {
        var used = CompiledCode.Crossings.Select(c => (User: CompiledCode.Room(c.User)!, Used: CompiledCode.Room(c.Used)!))
            .ToLookup(c => c.User, c => c.Used, StringComparer.Ordinal);
        var free = used.SelectMany(u => u.Append(u.Key)).ToHashSet(StringComparer.Ordinal);
        while (free.RemoveWhere(room => !used[room].Any(free.Contains)) > 0)
        {
        }

        Assert.Empty(free);
    }

    [Theory]
    [InlineData("Plots", "RunFiles")]
    [InlineData("Store", "Plots")]
    [InlineData("Store.Copy", "Plots")]
    [InlineData("Store.Journal", "Plots")]
    public void Rooms_that_keep_apart_though_one_stands_below(string room, string other)
        => Assert.DoesNotContain(
            (room, other), CompiledCode.Crossings.Select(c => (CompiledCode.Room(c.User)!, CompiledCode.Room(c.Used)!)));

    [Theory]
    [InlineData("LiteDB", "Store.Copy")]
    [InlineData("Npgsql", "Sharing")]
    [InlineData("System.IO.Hashing", "Store.Copy", "Store.Journal")]
    [InlineData("Terminal.Gui", "Tui", "Tui.Pattern")]
    [InlineData("OxyPlot", "Plots.Oxy")]
    [InlineData("SkiaSharp", "Plots.Oxy")]
    [InlineData("HarfBuzzSharp", "Plots.Oxy")]
    [InlineData("System.CommandLine", "Cli", "Cli.Commands", "Cli.Practice", "Cli.Entries", "Cli.Guide", "Cli.Share", "Cli.Calls")]
    [InlineData("CsvHelper", "Tables", "RunFiles", "MaterialFiles", "OilFiles", "PracticeFiles")]
    [InlineData("DocumentFormat.OpenXml", "Sheets")]
    [InlineData("QRCoder", "Labels")]
    [InlineData("System.IO.Ports", "Feeds")]
    [
        InlineData(
            "MathNet",
            "Core.Practice",
            "Core.Checking",
            "Core.Charting",
            "Core.Inference",
            "Core.Sampling",
            "Core.Observing",
            "Core.Fitting",
            "Core.Flow",
            "Core.Settling",
            "Core.Curves",
            "Core.Advising",
            "Core.Measuring"),
    ]
    public void A_library_stays_in_its_room(string library, params string[] rooms)
        => None(CompiledCode.Uses
            .Where(
                u => u.Used.Scope?.Name.StartsWith(library, StringComparison.Ordinal) == true
                    && CompiledCode.Room(u.User) is { } room
                    && !rooms.Contains(room, StringComparer.Ordinal))
            .Select(u => $"{u.User.FullName} uses {u.Used.FullName}"));

    /// <summary>
    /// A new one of a kind touches one room: nobody outside it names the single ones there are. A string's forms have numbers of their own,
    /// which Inference reports.
    /// </summary>
    [Theory]
    [InlineData("Core.Curves.Shape", 9)]
    [InlineData("Core.Flow.FlowModel", 7)]
    public void The_single_ones_of_a_kind_are_known_in_their_room_alone(string kind, int least)
    {
        var single = CompiledCode.Types.Where(t => t.BaseType?.FullName == "Viscolog." + kind).Select(t => t.FullName)
            .ToHashSet(StringComparer.Ordinal);
        Assert.True(single.Count >= least, kind);
        None(CompiledCode.Crossings.Where(c => single.Contains(c.Used.FullName)).Select(c => $"{c.User.FullName} uses {c.Used.FullName}"));
    }

    /// <summary>A new method touches Measuring alone: nobody outside it asks for a method by its name.</summary>
    [Fact]
    public void No_method_is_named_outside_Measuring()
    {
        var names = Viscolog.Core.Measuring.Method.All.Select(m => m.Id).Where(id => id != "direct").ToHashSet(StringComparer.Ordinal);
        None(CompiledCode.Types.Where(t => CompiledCode.Room(t) is { } room && room != "Core.Measuring")
            .SelectMany(t => t.Methods.Where(m => m.HasBody)
                .SelectMany(
                    m => m.Body.Instructions.Select(i => i.Operand).OfType<string>().Where(names.Contains)
                        .Select(text => $"{m.FullName} says \"{text}\""))));
    }

    /// <summary>
    /// Sentences about files and calls stand in the shell: Core knows no option, no column or header key of a file, no command.
    /// </summary>
    [Fact]
    public void Core_names_no_option_no_column_and_no_command()
    {
        var names = Columns.ByName.Keys.Concat(HeaderKeys.ByName.Keys).Concat(FlowColumns.All.Keys).Concat(FlowHeader.Keys)
            .Concat(MaterialColumns.ByName.Keys).Concat(OilColumns.All).Where(n => n.Contains('_', StringComparison.Ordinal))
            .Distinct(StringComparer.Ordinal);
        var said = new Regex(
            $"--[a-z]|viscolog [a-z]|\\b({string.Join('|', names.Select(Regex.Escape))})\\b", RegexOptions.None, TimeSpan.FromSeconds(5));
        None(CompiledCode.Types.Where(t => CompiledCode.Room(t) is { } room && room.StartsWith("Core.", StringComparison.Ordinal))
            .SelectMany(t => t.Methods.Where(m => m.HasBody)
                .SelectMany(
                    m => m.Body.Instructions.Select(i => i.Operand).OfType<string>().Where(text => said.IsMatch(text) && !IsName(t, text))
                        .Select(text => $"{m.FullName} says \"{text}\""))));

        // A scale and a law's parameter have names of their own; some files use them for a column.
        static bool IsName(Mono.Cecil.TypeDefinition type, string text)
            => type.FullName is "Viscolog.Core.Measuring.InstrumentScale" or "Viscolog.Core.Flow.NewtonModel"
                && !text.Contains(' ', StringComparison.Ordinal);
    }

    /// <summary>
    /// Whatever is written to a terminal goes by the one writer that makes it harmless; screens are drawn by their library.
    /// </summary>
    [Fact]
    public void Nobody_else_opens_the_standard_streams()
    {
        string[] openers =
        [
            "Viscolog.Cli.Calls.StandardStreams",
            "Viscolog.Tables.InputFile",
            "Viscolog.Feeds.LineSource/Input",
            "Viscolog.Tui.TuiSession",
            "Viscolog.Tui.TuiRescue",
        ];
        string[] looks =
        [
            "get_IsInputRedirected",
            "get_IsOutputRedirected",
            "get_IsErrorRedirected",
            "get_OutputEncoding",
            "get_WindowWidth",
            "get_In",
        ];
        None(CompiledCode.Types.Where(t => !openers.Contains(t.FullName, StringComparer.Ordinal))
            .SelectMany(t => t.Methods.Where(m => m.HasBody).SelectMany(m => m.Body.Instructions
                .Select(i => i.Operand).OfType<Mono.Cecil.MethodReference>()
                .Where(u => u.DeclaringType.FullName == "System.Console" && !looks.Contains(u.Name, StringComparer.Ordinal))
                .Select(u => $"{m.FullName} calls {u.Name}"))));
    }

    private static void None(IEnumerable<string> found)
    {
        var all = found.ToList();
        Assert.True(all.Count == 0, string.Join('\n', all));
    }

    private static int Floor(Mono.Cecil.TypeReference type)
        => Array.FindIndex(Floors, f => f.Contains(CompiledCode.Room(type), StringComparer.Ordinal));
}
