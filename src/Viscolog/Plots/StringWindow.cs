using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>The part of the dose–string plane that a picture shows.</summary>
/// <param name="Dose">The greatest dose, %; the least is 0.</param>
/// <param name="Millimeters">The greatest length, mm; the least is 0.</param>
internal sealed record StringWindow(double Dose, double Millimeters)
{
    /// <summary>What stands in an empty picture.</summary>
    public const string Nothing = "nothing to show yet: no string length was read";

    /// <summary>Room beyond the outermost value.</summary>
    private const double Room = 1.1;

    public static StringWindow Of(IReadOnlyList<RunPicture> pictures)
    {
        var doses = pictures.SelectMany(p => p.Strings.Select(s => s.Dose).Concat(p.Steps.Select(s => s.Dose))).Select(d => d.Percent);
        var lengths = pictures.SelectMany(p => p.Strings).Select(s => s.Length.Millimeters)
            .Concat(pictures.Select(p => p.TargetString?.High.Millimeters ?? 0));
        return new(Beyond(doses, 1), Beyond(lengths, 50));
    }

    private static double Beyond(IEnumerable<double> values, double least)
    {
        var most = values.DefaultIfEmpty(0).Max();
        return most > 0 ? Room * most : least;
    }
}
