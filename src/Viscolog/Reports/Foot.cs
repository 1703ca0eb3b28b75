using System.Reflection;
using Viscolog.Core.Pots;

namespace Viscolog.Reports;

/// <summary>What stands small at the end of a document.</summary>
internal static class Foot
{
    public static string Of(Run run, Guid? id = null)
        => $"Made by Viscolog {Version} from {RunFacts.Name(run)}{(id is { } known ? $", run {known:D}" : "")}. Advice is not a release: who signs decides.";

    private static string Version { get; } = typeof(Foot).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
}
