namespace Viscolog.Core.Flow;

/// <summary>A fitted parameter of a flow model.</summary>
/// <param name="Name">Its name in answers, with the unit in it.</param>
/// <param name="Words">Its name for a person.</param>
/// <param name="Unit">Its unit; "1" for a pure number.</param>
/// <param name="Value">The value; 0 where the fit fell below 0 for a quantity that can't.</param>
/// <param name="StandardError">Its standard error by the delta method; null where nothing tells it.</param>
/// <param name="UpperLimit">Where the data do not tell the value from 0: what it is below with 95 % confidence. Else null.</param>
public sealed record FlowParameter(string Name, string Words, string Unit, double Value, double? StandardError, double? UpperLimit);
