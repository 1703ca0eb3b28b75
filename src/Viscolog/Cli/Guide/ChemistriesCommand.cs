using Viscolog.Cli.Json;
using Viscolog.RunFiles;
using Viscolog.Wording;

namespace Viscolog.Cli.Guide;

/// <summary>The chemistries of thickeners.</summary>
internal sealed class ChemistriesCommand() : NamesCommand("chemistries", "List the chemistries that a thickener may have.")
{
    protected override IReadOnlyList<NamedThing> Names
        => [.. FileNames.Chemistries.Names.Select(n => new NamedThing(n.Name, ChemistryWords.Of(n.Member)))];
}
