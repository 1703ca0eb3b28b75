using Viscolog.Cli.Json;
using Viscolog.Core.Measuring;

namespace Viscolog.Cli.Guide;

/// <summary>The methods of measuring.</summary>
internal sealed class MethodsCommand() : NamesCommand("methods", "List the methods of measuring that a run file or 'convert' may name.")
{
    protected override IReadOnlyList<NamedThing> Names
        => [.. Method.All.Select(m => new NamedThing(m.Id, m.Words, m.Unit, m.Repeatability.Percent))];
}
