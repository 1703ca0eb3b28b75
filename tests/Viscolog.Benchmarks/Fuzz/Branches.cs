using Mono.Cecil;
using Mono.Cecil.Cil;
using Mono.Cecil.Rocks;

namespace Viscolog.Benchmarks.Fuzz;

/// <summary>A copy of the program that writes down which branches of its readers it takes.</summary>
internal static class Branches
{
    private const string TypeName = "ViscologBranches";
    private const string FieldName = "Taken";

    private static readonly string[] Rooms =
    [
        "Viscolog.Tables", "Viscolog.RunFiles", "Viscolog.MaterialFiles", "Viscolog.OilFiles", "Viscolog.FlowFiles", "Viscolog.TrendFiles",
        "Viscolog.PracticeFiles",
        "Viscolog.Store.Journal",
        "Viscolog.Store.Copy",
        "Viscolog.Text",
        "Viscolog.Core.Measuring",
        "Viscolog.Core.Pots",
    ];

    /// <summary>What was taken, a byte a branch; null in a program that does not tell.</summary>
    public static byte[]? Taken { get; } = (byte[]?)typeof(
        Viscolog.Cli.CommandLine).Assembly.GetType(TypeName)?.GetField(FieldName)?.GetValue(null);

    /// <summary>Copies the program of this process to a folder and makes it tell.</summary>
    public static void Copy(string folder)
    {
        foreach (var path in Directory.GetFiles(AppContext.BaseDirectory, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(folder, Path.GetRelativePath(AppContext.BaseDirectory, path));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(path, target);
        }

        using var module = ModuleDefinition.ReadModule(Path.Combine(AppContext.BaseDirectory, "viscolog.dll"));
        var field = Field(module);
        var count = 0;
        var types = module.GetAllTypes()
            .Where(t => t != field.DeclaringType && Array.Exists(Rooms, r => Outer(t).Namespace.StartsWith(r, StringComparison.Ordinal)));
        foreach (var method in types.SelectMany(t => t.Methods.Where(m => m.HasBody)))
        {
            Tell(method, field, ref count);
        }

        Begin(field, count);
        module.Write(Path.Combine(folder, "viscolog.dll"));
    }

    private static TypeDefinition Outer(TypeDefinition type) => type.DeclaringType is { } outer ? Outer(outer) : type;

    private static FieldDefinition Field(ModuleDefinition module)
    {
        var type = new TypeDefinition(
            "",
            TypeName,
            TypeAttributes.Public | TypeAttributes.Abstract | TypeAttributes.Sealed,
            module.TypeSystem.Object);
        var field = new FieldDefinition(FieldName, FieldAttributes.Public | FieldAttributes.Static, new ArrayType(module.TypeSystem.Byte));
        type.Fields.Add(field);
        module.Types.Add(type);
        return field;
    }

    private static void Begin(FieldDefinition field, int count)
    {
        var attributes = MethodAttributes.Private | MethodAttributes.Static | MethodAttributes.SpecialName
            | MethodAttributes.RTSpecialName | MethodAttributes.HideBySig;
        var begin = new MethodDefinition(".cctor", attributes, field.Module.TypeSystem.Void);
        var code = begin.Body.GetILProcessor();
        code.Emit(OpCodes.Ldc_I4, count);
        code.Emit(OpCodes.Newarr, field.Module.TypeSystem.Byte);
        code.Emit(OpCodes.Stsfld, field);
        code.Emit(OpCodes.Ret);
        field.DeclaringType.Methods.Add(begin);
    }

    /// <summary>Marks a method's beginning and every place that something jumps to or that follows a jump.</summary>
    private static void Tell(MethodDefinition method, FieldDefinition field, ref int count)
    {
        var body = method.Body;
        body.SimplifyMacros();
        var code = body.GetILProcessor();
        var bounds = body.ExceptionHandlers.SelectMany(h => new[] { h.TryStart, h.TryEnd, h.HandlerStart, h.HandlerEnd, h.FilterStart })
            .ToHashSet();
        var places = body.Instructions.Where(i => i.OpCode.FlowControl == FlowControl.Cond_Branch && i.Next is not null).Select(i => i.Next)
            .Concat(body.Instructions.SelectMany(Targets)).Append(body.Instructions[0]).Distinct().Where(p => !bounds.Contains(p)).ToList();
        foreach (var place in places)
        {
            Instruction[] mark =
            [
                code.Create(OpCodes.Ldsfld, field),
                code.Create(OpCodes.Ldc_I4, count++),
                code.Create(OpCodes.Ldc_I4_1),
                code.Create(OpCodes.Stelem_I1),
            ];
            Array.ForEach(mark, m => code.InsertBefore(place, m));
            foreach (var jump in body.Instructions)
            {
                jump.Operand = jump.Operand == place ? mark[0]
                    : jump.Operand is Instruction[] many ? Array.ConvertAll(many, m => m == place ? mark[0] : m)
                    : jump.Operand;
            }
        }

        body.OptimizeMacros();
    }

    private static IEnumerable<Instruction> Targets(Instruction jump) => jump.Operand switch
    {
        Instruction one => [one],
        Instruction[] many => many,
        _ => [],
    };
}
