using Viscolog.Store;

namespace Viscolog.Cli.Json;

/// <summary>A reading of a certified oil.</summary>
/// <param name="Number">Its number in the log.</param>
/// <param name="Is">The cells of its row in an oils file.</param>
/// <param name="DeviationPct">How far it read off, brought to the certificate's temperature.</param>
/// <param name="Void">Why it counts no more.</param>
internal sealed record OilAnswer(int Number, IReadOnlyDictionary<string, string> Is, double DeviationPct, string? Void)
{
    public static OilAnswer Of(LoggedOil oil) => new(oil.Number, oil.Row.Cells, Rounded.Four(100 * double.ExpM1(oil.Row.Reading.Deviation.Ln)), oil.Row.Void);
}
