namespace Viscolog.Core.Checking;

/// <summary>One batch's value on a control chart.</summary>
/// <param name="Batch">The batch, as it was named.</param>
/// <param name="Value">Its value, in the chart's unit; finite.</param>
public sealed record ChartPoint(string Batch, double Value);
