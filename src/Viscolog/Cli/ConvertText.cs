using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>A converted reading as a person reads it.</summary>
internal static class ConvertText
{
    private const int Indent = 15;

    public static void Write(CallOutput terminal, Method method, double value, ConvertedReading reading, ReferenceValue? at)
    {
        terminal.Line(FormattableString.Invariant($"{value:0.######} {ReadingWords.Typed(method)} by {method.Id}"));
        terminal.Line();
        if (reading.Kinematic is { } kinematic)
        {
            Item(terminal, "Kinematic", $"{Shown.Number(kinematic.SquareMillimetersPerSecond)} mm²/s");
        }

        Item(terminal, "Dynamic", reading switch
        {
            { Dynamic: { } dynamic } => Shown.Body(dynamic),
            { YieldStress: { Pascals: var pascals } } => $"none: a slump tells a yield stress, {Shown.Number(pascals)} Pa",
            _ => "give --density for it",
        });
        if (at is not null)
        {
            var brought = reading switch
            {
                { Dynamic: { } dynamic } => Shown.Body(Viscosity.FromMilliPascalSeconds(dynamic.MilliPascalSeconds * at.Factor)),
                { YieldStress: { } stress } => $"{Shown.Number(stress.Pascals * at.Factor)} Pa",
                _ => $"{Shown.Number(reading.Kinematic!.Value.SquareMillimetersPerSecond * at.Factor)} mm²/s",
            };
            Item(terminal, "At reference", FormattableString.Invariant($"{brought} at {at.At.Celsius:0.#} °C, uncertain by {at.Uncertainty.Percent:0.0} %"));
        }

        Item(terminal, "Uncertainty", FormattableString.Invariant(
            $"{reading.Uncertainty.Percent:0.0} % (one standard deviation): repeatability {reading.Repeatability.Percent:0.#} %, this reading {reading.ReadingUncertainty.Percent:0.0} %, calibration and formula {reading.CalibrationUncertainty.Percent:0.#} %"));
        Item(terminal, "Shear", reading.Shear);
        if (reading.Better is { } better)
        {
            Item(terminal, "Better", better);
        }

        Item(terminal, "Source", reading.Source);
    }

    public static void Item(CallOutput terminal, string name, string text)
    {
        foreach (var line in Paragraph.Of(text, terminal.Width - Indent))
        {
            terminal.Line($"  {name,-12} {line}");
            name = "";
        }
    }
}
