namespace Viscolog.Core.Flow;

/// <summary>On which scale a parameter of a flow model is fitted.</summary>
internal enum ParameterScale
{
    /// <summary>As it is; may come out below 0, which says that the data do not show it.</summary>
    Plain,

    /// <summary>As its logarithm; stays above 0.</summary>
    Logarithm,

    /// <summary>As its root with a sign; a root below 0 counts as below 0.</summary>
    Root,
}
