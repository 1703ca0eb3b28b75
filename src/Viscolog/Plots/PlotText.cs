using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Plots;

/// <summary>Texts as pictures show them.</summary>
internal static class PlotText
{
    /// <summary>The unit of every viscosity here.</summary>
    public const string Unit = "mPa·s";

    /// <summary>What is estimated, as <see cref="Shown.Number"/> rounds it.</summary>
    public static string Number(double value) => Full(value, Shown.Number);

    /// <summary>A viscosity without its unit.</summary>
    public static string Number(Viscosity value) => Number(value.MilliPascalSeconds);

    /// <summary>What is stated, as <see cref="Shown.Limit"/> rounds it.</summary>
    public static string Stated(double value) => Full(value, Shown.Limit);

    /// <summary>A range that is stated.</summary>
    public static string Stated(double low, double high) => Say($"{Stated(low)} to {Stated(high)}");

    /// <summary>A mark of an axis.</summary>
    public static string Tick(double value) => Full(value, Shown.Round);

    /// <summary>A dose with its unit, to the hundredth that a bench scale tells.</summary>
    public static string Percent(Dose dose) => string.Create(Numbers, $"{dose.Percent:0.00} %");

    /// <summary>A temperature with its unit.</summary>
    public static string Celsius(Temperature value) => string.Create(Numbers, $"{value.Celsius:0.0} °C");

    /// <summary>A chance with its unit.</summary>
    public static string Level(Estimate value) => string.Create(Numbers, $"{value.Level.Percent:0.#} %");

    /// <summary>The name of a law of flow.</summary>
    public static string Law(FlowModel model) => model.Name switch
    {
        "newton" => Say("newton"),
        "power-law" => Say("power-law"),
        "bingham" => Say("bingham"),
        "herschel-bulkley" => Say("herschel-bulkley"),
        "casson" => Say("casson"),
        "cross" => Say("cross", "law"),
        "carreau" => Say("carreau"),
        var other => other,
    };

    /// <summary>Beyond 15 places a number in full says nothing that a person can read.</summary>
    private static string Full(double value, Func<double, string> rounded) => Math.Abs(value) is >= 1e15 or (> 0 and < 1e-9)
        ? value.ToString("0.##E+0", Numbers)
        : rounded(value);
}
