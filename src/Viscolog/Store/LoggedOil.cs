using Viscolog.OilFiles;

namespace Viscolog.Store;

/// <summary>A reading of a certified oil that the log has.</summary>
/// <param name="Number">Its number in this log, from 1.</param>
/// <param name="Row">What it says.</param>
internal sealed record LoggedOil(int Number, OilRow Row);
