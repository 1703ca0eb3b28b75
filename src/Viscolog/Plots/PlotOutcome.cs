namespace Viscolog.Plots;

/// <summary>What became of a picture that was to be written.</summary>
internal abstract record PlotOutcome
{
    private PlotOutcome()
    {
    }

    /// <summary>The file is there, whole.</summary>
    /// <param name="Path">Where.</param>
    internal sealed record Written(string Path) : PlotOutcome;

    /// <summary>Nothing was written.</summary>
    /// <param name="Reason">One line that says what to do.</param>
    internal sealed record Refused(string Reason) : PlotOutcome;
}
