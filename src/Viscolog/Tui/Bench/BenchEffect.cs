using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;

namespace Viscolog.Tui.Bench;

/// <summary>What the bench screen asks the world to do. The set of cases is closed.</summary>
internal abstract record BenchEffect
{
    private BenchEffect()
    {
    }

    /// <summary>Log a row.</summary>
    internal sealed record AddRow(FileRow Row, string Said) : BenchEffect;

    /// <summary>Make a row void; put another in its place where there is one.</summary>
    internal sealed record VoidRow(int Row, string Reason, FileRow? By, string Said) : BenchEffect;

    /// <summary>State the header anew.</summary>
    internal sealed record Restate(RunFile Header, string Said) : BenchEffect;

    /// <summary>Work out advice.</summary>
    internal sealed record Ask(int Asked, Run Run, Percentage Risk) : BenchEffect;

    /// <summary>Ring the bell.</summary>
    internal sealed record Ring : BenchEffect;
}
