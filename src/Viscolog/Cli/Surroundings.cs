namespace Viscolog.Cli;

/// <summary>What a call finds around it.</summary>
/// <param name="Variable">A variable of the environment; null where it is not set.</param>
/// <param name="Clock">The time.</param>
internal sealed record Surroundings(Func<string, string?> Variable, TimeProvider Clock)
{
    /// <summary>Those of the process.</summary>
    public static Surroundings OfProcess { get; } = new(Environment.GetEnvironmentVariable, TimeProvider.System);
}
