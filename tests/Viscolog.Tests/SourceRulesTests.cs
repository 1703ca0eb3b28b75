using Mono.Cecil;
using Viscolog.Tests.Support;

namespace Viscolog.Tests;

/// <summary>Rules of the sources that a machine can see.</summary>
public sealed class SourceRulesTests
{
    private const int MostColumns = 140;
    private const int MostFiles = 26;

    /// <summary>Called by the compiler, by what generates code, or by tests that look at what is otherwise only drawn or listed.</summary>
    private static readonly string[] CalledOtherwise =
    [
        "Viscolog.Languages.SaidText::AppendFormatted",
        "Viscolog.Languages.Tongue::In",
        "Viscolog.Languages.Translations::get_Texts",
        "Viscolog.FlowFiles.FlowHeader::get_Keys",
        "Viscolog.TrendFiles.TrendHeader::get_Keys",
        "Viscolog.Tui.Pattern.Page::get_Text",
    ];

    [Fact]
    public void No_line_is_longer_than_140_columns()
        => Assert.Empty(
            Sources().SelectMany(f => File.ReadLines(f).Index().Where(l => l.Item.Length > MostColumns).Select(l => $"{f}:{l.Index + 1}")));

    [Fact]
    public void No_folder_holds_more_than_some_25_files()
        => Assert.Empty(
            Sources().GroupBy(Path.GetDirectoryName, StringComparer.Ordinal).Where(g => g.Count() > MostFiles)
                .Select(g => $"{g.Key}: {g.Count()}"));

    /// <summary>What no command, screen or file needs goes, or moves to the tests that use it.</summary>
    [Fact]
    public void Nothing_stands_that_the_program_does_not_use()
    {
        var used = CompiledCode.Types.SelectMany(t => t.Methods).Where(m => m.HasBody)
            .SelectMany(m => m.Body.Instructions.Select(i => i.Operand).OfType<MethodReference>().Select(Key).Where(u => u != Key(m)))
            .ToHashSet();
        var unused = CompiledCode.Types.Where(t => !IsGenerated(t)).SelectMany(t => t.Methods).Where(IsWritten).Select(Key)
            .Where(m => !used.Contains(m) && !CalledOtherwise.Contains(m.Name, StringComparer.Ordinal));
        Assert.Empty(unused);
    }

    private static IEnumerable<string> Sources()
    {
        var between = Path.DirectorySeparatorChar;
        return new[] { "src", "tests" }.SelectMany(f => Directory.EnumerateFiles(Checkout.At(f), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{between}obj{between}", StringComparison.Ordinal)
                && !f.Contains($"{between}bin{between}", StringComparison.Ordinal));
    }

    private static (string Name, int Parameters) Key(MethodReference method)
        => ($"{method.DeclaringType.GetElementType().FullName}::{method.Name}", method.Parameters.Count);

    private static bool IsGenerated(TypeDefinition type)
        => type.Name.StartsWith('<') || type.CustomAttributes.Any(a => a.AttributeType.Name == "GeneratedCodeAttribute")
            || type.Methods.Any(m => m.Name == "get_GeneratedSerializerOptions");

    // What a base type or an interface calls and what the compiler gives to a record is called from elsewhere.
    private static bool IsWritten(MethodDefinition method)
        => !method.IsVirtual && !method.IsSetter && !method.IsConstructor && !method.Name.StartsWith('<')
            && !method.Name.StartsWith("op_", StringComparison.Ordinal) && method.Name is not ("Deconstruct" or "PrintMembers")
            && (method.IsGetter || !method.CustomAttributes.Any(a => a.AttributeType.Name == "CompilerGeneratedAttribute"));
}
