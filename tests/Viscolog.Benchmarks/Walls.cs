using System.Globalization;
using Mono.Cecil;
using Mono.Cecil.Cil;
using Viscolog.Tests.Support;

namespace Viscolog.Benchmarks;

/// <summary>Counts what a command and a keystroke call across the borders of rooms, as the compiled code has it.</summary>
internal static class Walls
{
    private static readonly ILookup<string, MethodDefinition> Overriding = CompiledCode.Types
        .SelectMany(t => t.Methods.Where(m => m.IsVirtual && !m.IsAbstract).SelectMany(m => Overridden(t, m).Select(o => (Of: o, By: m))))
        .ToLookup(o => o.Of.FullName, o => o.By, StringComparer.Ordinal);

    public static int Run()
    {
        Print("the command advise", m => (m.DeclaringType.Name, m.Name) is ("AdviseCommand", "Run"));
        Print(
            "a keystroke on the bench",
            m => (m.DeclaringType.Name, m.Name) is ("BenchSteps", "Next") or ("BenchScreen", "TakeKey" or "TakeFieldKey"));
        return 0;
    }

    private static void Print(string what, Func<MethodDefinition, bool> isStart)
    {
        var edges = Reached([.. CompiledCode.Types.SelectMany(t => t.Methods).Where(isStart)]);
        var crossings = edges.Select(
            e => (From: CompiledCode.Room(e.Caller.DeclaringType), To: CompiledCode.Room(e.Called.DeclaringType), e.Called))
            .Where(e => e.From is not null && e.To is not null && e.From != e.To && !IsStaticConstructor(e.Called)).ToList();
        var rooms = edges.SelectMany(e => new[] { CompiledCode.Room(e.Caller.DeclaringType), CompiledCode.Room(e.Called.DeclaringType) })
            .OfType<string>().Distinct(StringComparer.Ordinal).Count();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: {crossings.Count} calls from one room to another, {crossings.Count(e => !e.Called.IsGetter)} of them "
                + $"not to read a property; {rooms} rooms"));
        foreach (
            var pair in crossings.GroupBy(e => (e.From, e.To)).OrderBy(p => p.Key.From, StringComparer.Ordinal)
                .ThenBy(p => p.Key.To, StringComparer.Ordinal))
        {
            Console.WriteLine(FormattableString.Invariant($"  {pair.Key.From,-16} {pair.Key.To,-16} {pair.Count(),4}"));
        }
    }

    /// <summary>Each caller with each method that it may call, once, from the starts on.</summary>
    private static HashSet<(MethodDefinition Caller, MethodDefinition Called)> Reached(IReadOnlyList<MethodDefinition> starts)
    {
        var edges = new HashSet<(MethodDefinition, MethodDefinition)>();
        var seen = starts.ToHashSet();
        var waiting = new Queue<MethodDefinition>(starts);
        while (waiting.TryDequeue(out var caller))
        {
            foreach (var called in Called(caller))
            {
                edges.Add((caller, called));
                if (seen.Add(called))
                {
                    waiting.Enqueue(called);
                }
            }
        }

        return edges;
    }

    private static IEnumerable<MethodDefinition> Called(MethodDefinition caller)
    {
        var inside = caller.HasBody ? caller.Body.Instructions.SelectMany(Called) : [];

        // The framework calls what overrides its own methods once an object is there: an iterator's steps, a view's keys.
        return caller.IsConstructor && !caller.IsStatic
            ? inside.Concat(
                caller.DeclaringType.Methods.Where(m => m.IsVirtual && !m.IsAbstract && !Overridden(m.DeclaringType, m).Any(o => o != m)))
            : inside;
    }

    private static IEnumerable<MethodDefinition> Called(Instruction instruction) => instruction.Operand switch
    {
        MethodReference method when Own(method.DeclaringType) is { } type && method.Resolve() is { } target
            => (instruction.OpCode.Code == Code.Call && !target.IsAbstract ? [target] : Overriding[target.FullName].Append(target))
                .Where(m => !m.IsAbstract).Distinct().Concat(Prepared(type)),
        FieldReference { DeclaringType: var holder } field when Own(holder) is { } type && field.Resolve().IsStatic => Prepared(type),
        _ => [],
    };

    /// <summary>The static constructor of a type, which its first use runs.</summary>
    private static IEnumerable<MethodDefinition> Prepared(TypeDefinition type) => type.Methods.Where(IsStaticConstructor);

    private static bool IsStaticConstructor(MethodDefinition method) => method is { IsConstructor: true, IsStatic: true };

    /// <summary>The methods of Core and the shell that a method of a type stands for, itself among them.</summary>
    private static IEnumerable<MethodDefinition> Overridden(TypeDefinition type, MethodDefinition method)
    {
        for (var above = type; above is not null; above = Own(above.BaseType))
        {
            foreach (var known in above.Interfaces.Select(i => Own(i.InterfaceType)).OfType<TypeDefinition>().Append(above))
            {
                foreach (
                    var same in known.Methods.Where(
                        m => m.IsVirtual && m.Parameters.Count == method.Parameters.Count && method.Name.Split('.')[^1] == m.Name))
                {
                    yield return same;
                }
            }
        }
    }

    private static TypeDefinition? Own(TypeReference? type) => type is not null && CompiledCode.IsOwn(type) ? type.Resolve() : null;
}
