using Viscolog.Core.Curves;
using Viscolog.Core.Fitting;

namespace Viscolog.Cli.Commands;

/// <summary>Shapes and their parameters by the names that a person reads; scripts know them by the English ones.</summary>
/// <param name="Thickener">What makes the body.</param>
/// <param name="StringThickener">What makes the strings; null with one thickener.</param>
internal sealed record FitNames(string Thickener, string? StringThickener)
{
    /// <summary>The name of a shape.</summary>
    public static string Of(Shape shape) => Named(shape.Name);

    /// <summary>The name of a parameter, which may have that of a thickener in it.</summary>
    public string Of(FittedParameter parameter)
    {
        foreach (var name in new[] { Thickener, StringThickener }.OfType<string>())
        {
            if (parameter.Name == $"rise by {name} at its range top")
            {
                return Say($"rise by {name} at its range top");
            }

            if (parameter.Name == $"more of that at the range top of {name}")
            {
                return Say($"more of that at the range top of {name}");
            }

            if (parameter.Name == $"exponent of {name}")
            {
                return Say($"exponent of {name}");
            }
        }

        return Fixed(parameter.Name);
    }

    private static string Fixed(string name) => name switch
    {
        "base" => Say("base"),
        "time constant" => Say("time constant"),
        "repeatability" => Say("repeatability"),
        "bend" => Say("bend"),
        "chance of a late rise" => Say("chance of a late rise"),
        "its half-way dose" => Say("its half-way dose"),
        "its steepness" => Say("its steepness"),
        _ => OfShape(name),
    };

    private static string OfShape(string name) => name switch
    {
        "rise at range top" => Say("rise at range top"),
        "half-way dose" => Say("half-way dose"),
        "peak height" => Say("peak height"),
        "peak dose" => Say("peak dose"),
        "span" => Say("span"),
        "steepness" => Say("steepness"),
        "onset dose" => Say("onset dose"),
        "power above 1" => Say("power above 1"),
        "slope before onset" => Say("slope before onset"),
        "strength" => Say("strength"),
        "locking dose" => Say("locking dose"),
        "slope" => Say("slope"),
        "step height" => Say("step height"),
        "step dose" => Say("step dose"),
        "step width" => Say("step width"),
        "first rise" => Say("first rise"),
        "first dose" => Say("first dose"),
        "second rise" => Say("second rise"),
        "second dose" => Say("second dose"),
        "second width" => Say("second width"),
        "overlap dose" => Say("overlap dose"),
        "power" => Say("power", "exponent"),
        "threshold dose" => Say("threshold dose"),
        "width" => Say("width"),
        var other => other,
    };
}
