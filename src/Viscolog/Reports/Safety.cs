using System.Collections.Immutable;

namespace Viscolog.Reports;

/// <summary>Cautions as a document states them.</summary>
internal static class Safety
{
    /// <summary>What holds wherever colour goes in.</summary>
    private const string Metal = "Metal pigments are poisonous or catch fire when they raise dust, and some give off gas with alkali: as pastes, never dry, never into a closed vessel.";

    /// <summary>The cautions of a thickener with what belongs to colour, the deciding word last.</summary>
    public static string Of(ImmutableArray<string> cautions) => string.Join(' ', cautions.Length == 0 ? [Metal] : [.. cautions[..^1], Metal, cautions[^1]]);
}
