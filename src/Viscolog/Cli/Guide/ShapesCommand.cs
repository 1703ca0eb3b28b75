using Viscolog.Cli.Json;
using Viscolog.Core.Curves;

namespace Viscolog.Cli.Guide;

/// <summary>The shapes of curve.</summary>
internal sealed class ShapesCommand() : NamesCommand("shapes", "List the shapes of dose–response curve that are fitted.")
{
    protected override IReadOnlyList<NamedThing> Names
        => [.. Shapes.All.Select(s => new NamedThing(s.Name, $"parameters: {string.Join(", ", s.Parameters.Select(p => p.Name))}"))];
}
