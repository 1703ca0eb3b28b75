using Mono.Cecil;
using Mono.Cecil.Cil;
using Mono.Cecil.Rocks;

namespace Viscolog.Tests.Support;

/// <summary>
/// Core and the shell as they were compiled, read down to the instructions. A room is a namespace, which is a folder.
/// What the compiler folds away (constants, nameof) leaves no trace here.
/// </summary>
internal static class CompiledCode
{
    private const string Root = "Viscolog.";

    private static readonly ModuleDefinition[] Modules = Read();

    /// <summary>All types of both assemblies, nested ones and those that the compiler made among them.</summary>
    public static IEnumerable<TypeDefinition> Types => Modules.SelectMany(m => m.GetAllTypes());

    /// <summary>What uses what, each pair once.</summary>
    public static IReadOnlyList<(TypeDefinition User, TypeReference Used)> Uses
        => field ??=
        [
            .. Types.SelectMany(t => Used(t).DistinctBy(used => used.FullName, StringComparer.Ordinal).Select(used => (t, used))),
        ];

    /// <summary>What uses what from one room to another.</summary>
    public static IEnumerable<(TypeDefinition User, TypeReference Used)> Crossings
        => Uses.Where(u => Room(u.User) is { } user && Room(u.Used) is { } used && user != used);

    /// <summary>
    /// The room that a type stands in, without the project's name; null for other people's types and for those that belong to no room.
    /// </summary>
    public static string? Room(TypeReference type)
    {
        while (type.DeclaringType is { } outer)
        {
            type = outer;
        }

        return type.Namespace.StartsWith(Root, StringComparison.Ordinal) ? type.Namespace[Root.Length..] : null;
    }

    /// <summary>Whether a type is ours.</summary>
    public static bool IsOwn(TypeReference type)
        => Array.Exists(Modules, m => m == type.Scope || type.Scope is AssemblyNameReference && type.Scope.Name == m.Assembly.Name.Name);

    /// <summary>
    /// Every type that a type names: in its declaration, its attributes, its signatures, its locals and its instructions.
    /// </summary>
    public static IEnumerable<TypeReference> Used(TypeDefinition type)
        => type.Interfaces.Select(i => i.InterfaceType).Append(type.BaseType)
            .Concat(Attributes(type)).Concat(Constraints(type))
            .Concat(type.Fields.SelectMany(f => Attributes(f).Append(f.FieldType)))
            .Concat(type.Properties.SelectMany(Attributes))
            .Concat(type.Events.SelectMany(Attributes))
            .Concat(type.Methods.SelectMany(Used))
            .SelectMany(Parts);

    private static IEnumerable<TypeReference> Used(MethodDefinition method)
        => Signature(method).Concat(Attributes(method)).Concat(Constraints(method)).Concat(Attributes(method.MethodReturnType))
            .Concat(method.Parameters.SelectMany(Attributes))
            .Concat(method.Overrides.SelectMany(Signature))
            .Concat(method.HasBody ? Used(method.Body) : []);

    private static IEnumerable<TypeReference> Used(MethodBody body)
        => body.Variables.Select(v => v.VariableType)
            .Concat(body.ExceptionHandlers.Select(h => h.CatchType))
            .Concat(body.Instructions.SelectMany(i => i.Operand switch
            {
                TypeReference type => [type],
                FieldReference field => [field.DeclaringType, field.FieldType],
                MethodReference called => Signature(called),
                _ => Enumerable.Empty<TypeReference>(),
            }));

    private static IEnumerable<TypeReference> Signature(MethodReference method)
        =>
        [
            method.DeclaringType,
            method.ReturnType,
            .. method.Parameters.Select(p => p.ParameterType),
            .. method is GenericInstanceMethod made ? made.GenericArguments : [],
        ];

    private static IEnumerable<TypeReference> Constraints(IGenericParameterProvider owner)
        => owner.GenericParameters.SelectMany(p => p.Constraints.Select(c => c.ConstraintType));

    private static IEnumerable<TypeReference> Attributes(ICustomAttributeProvider owner)
        => owner.CustomAttributes.SelectMany(a => a.ConstructorArguments
            .Concat(a.Properties.Concat(a.Fields).Select(named => named.Argument))
            .SelectMany(Values).Append(a.AttributeType));

    private static IEnumerable<TypeReference> Values(CustomAttributeArgument argument) => argument.Value switch
    {
        TypeReference type => [type, argument.Type],
        CustomAttributeArgument[] many => many.SelectMany(Values),
        CustomAttributeArgument boxed => Values(boxed),
        _ => [argument.Type],
    };

    private static IEnumerable<TypeReference> Parts(TypeReference? type) => type switch
    {
        null or GenericParameter => [],
        GenericInstanceType made => made.GenericArguments.SelectMany(Parts).Append(made.ElementType),
        IModifierType changed => Parts(changed.ModifierType).Concat(Parts(changed.ElementType)),
        TypeSpecification around => Parts(around.ElementType),
        _ => [type],
    };

    private static ModuleDefinition[] Read()
    {
        var shell = Path.Combine(AppContext.BaseDirectory, "viscolog.dll");
        var resolver = new DefaultAssemblyResolver();
        resolver.AddSearchDirectory(AppContext.BaseDirectory);
        var module = ModuleDefinition.ReadModule(shell, new() { AssemblyResolver = resolver });
        return [resolver.Resolve(module.AssemblyReferences.Single(a => a.Name == "Viscolog.Core")).MainModule, module];
    }
}
