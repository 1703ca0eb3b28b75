using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace Viscolog.Core.Fitting;

/// <summary>
/// What is set for the whole process in MathNet, before anything of Core runs, so that parallel fits never find it half set.
/// </summary>
internal static class SingleThread
{
    /// <summary>Matrices here are a few columns wide: starting workers costs MathNet eight times what the arithmetic does.</summary>
    [ModuleInitializer]
    [SuppressMessage("Usage", "CA2255", Justification = "The setting is the process's own, and Core is MathNet's only user there.")]
    internal static void Set() => MathNet.Numerics.Control.UseSingleThread();
}
