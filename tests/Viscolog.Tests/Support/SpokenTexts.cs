using Mono.Cecil;
using Mono.Cecil.Cil;

namespace Viscolog.Tests.Support;

/// <summary>
/// The texts that a program says, read from its compiled code: literals given to <c>Tongue.Say</c>, with holes numbered as they are looked
/// up.
/// </summary>
internal static class SpokenTexts
{
    private const string Sense = "¦";

    /// <summary>The texts of a module, each with the room and the method that says it; the text is null where the code can't be read
    /// so.</summary>
    public static IEnumerable<(string? Text, string Room, string Method)> Of(ModuleDefinition module)
        => module.GetTypes().SelectMany(t => t.Methods).Where(m => m.HasBody)
            .SelectMany(m => Of(m).Select(text => (text, Room(m.DeclaringType), m.FullName)));

    private static string Room(TypeDefinition type)
    {
        while (type.DeclaringType is { } outer)
        {
            type = outer;
        }

        return type.Namespace.Replace("Viscolog.", "", StringComparison.Ordinal);
    }

    private static IEnumerable<string?> Of(MethodDefinition method)
    {
        var open = new Stack<Template>();
        foreach (var at in method.Body.Instructions)
        {
            if (at.Operand is not MethodReference called)
            {
                continue;
            }

            if (called.DeclaringType.Name == "SaidText")
            {
                if (called.Name == ".ctor")
                {
                    open.Push(new());
                }
                else if (called.Name == "AppendLiteral")
                {
                    open.Peek().Literal((string)at.Previous.Operand);
                }
                else if (called.Name == "AppendFormatted")
                {
                    open.Peek().Hole(called, at);
                }
            }
            else if (called.DeclaringType.Name == "Tongue" && called.Name == "Say")
            {
                var sense = at.Previous.OpCode == OpCodes.Ldstr ? Sense + (string)at.Previous.Operand : "";
                var isPlain = called.Parameters[0].ParameterType.Name == "String";
                yield return (isPlain ? at.Previous.Previous.Operand as string : open.Pop().Text) is { } text ? text + sense : null;
            }
        }
    }

    /// <summary>A text that is being put together.</summary>
    private sealed class Template
    {
        private int _holes;

        public string Text { get; private set; } = "";

        public void Literal(string text)
            => Text += text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);

        public void Hole(MethodReference called, Instruction at)
        {
            var how = called.Parameters.Skip(1).Reverse().Select(p =>
            {
                at = at.Previous;
                return p.ParameterType.Name == "String" ? ":" + (string?)at.Operand : "," + Number(at);
            }).Reverse();
            Text += $"{{{_holes++}{string.Concat(how)}}}";
        }

        private static int Number(Instruction at) => at.OpCode.Code switch
        {
            Code.Ldc_I4_S => (sbyte)at.Operand,
            Code.Ldc_I4 => (int)at.Operand,
            Code.Ldc_I4_M1 => -1,
            var code => code - Code.Ldc_I4_0,
        };
    }
}
