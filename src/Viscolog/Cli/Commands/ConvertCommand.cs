using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Viscolog.Tables;
using Viscolog.Typing;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>One reading to a viscosity, or one value to another unit.</summary>
internal sealed class ConvertCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- convert --method iso-2431-4 60 --density 1.1";

    private readonly Argument<string?> _value = new("VALUE")
    {
        Description = "What was read, in the method's own unit (s, KU, %, mm), or the value to take to another unit.",
        Arity = ArgumentArity.ZeroOrOne,
        DefaultValueFactory = _ => null,
    };
    private readonly Option<string?> _method = TextOption.Create("--method", "ID", "How it was read.");
    private readonly Option<double?> _density = NumberOption.Create(
        "--density",
        "G_ML",
        "The liquid's density, in g/mL.",
        new("g/mL", 0.001, 1000));
    private readonly Option<double?> _factor = NumberOption.Create(
        "--factor",
        "N",
        "rotational: mPa·s for each % of torque.",
        new("", 1e-6, 1e12));
    private readonly Option<double?> _torque = NumberOption.Create(
        "--torque", "PCT", "rotational: torque in % of full scale; in place of VALUE.", new("%", 1e-6, 1000));
    private readonly Option<double?> _speed = NumberOption.Create(
        "--rpm", "RPM", "rotational: the speed, for the words on shear.", new("1/min", 1e-6, 1e6));
    private readonly Option<double?> _ball = NumberOption.Create(
        "--ball",
        "MM",
        "falling-ball: the ball's diameter.",
        new("mm", 0.001, 1e6));
    private readonly Option<double?> _ballDensity = NumberOption.Create(
        "--ball-density", "G_ML", "falling-ball: the ball's density.", new("g/mL", 0.001, 1000));
    private readonly Option<double?> _fall = NumberOption.Create(
        "--fall",
        "MM",
        "falling-ball: the distance that is timed.",
        new("mm", 0.001, 1e6));
    private readonly Option<double?> _jar = NumberOption.Create(
        "--jar",
        "MM",
        "falling-ball: the jar's inner diameter.",
        new("mm", 0.001, 1e6));
    private readonly Option<double?> _height = NumberOption.Create(
        "--height",
        "MM",
        "slump: the cylinder's height.",
        new("mm", 0.001, 1e6));
    private readonly Option<double?> _diameter = NumberOption.Create(
        "--diameter", "MM", "slump: the cylinder's inner diameter.", new("mm", 0.001, 1e6));
    private readonly Option<double?> _temperature = NumberOption.Create(
        "--temp", "C", "Temperature of the reading: the value is brought to --reference as well.", new("°C", -100, 500));
    private readonly Option<double?> _reference = NumberOption.Create(
        "--reference", "C", "Reference temperature; default 23 °C.", new("°C", -100, 500));
    private readonly Option<double?> _coefficient = NumberOption.Create(
        "--coefficient", "K", "The liquid's temperature coefficient B; default 2000 K ± 700 K.", new("K", 0, 30_000));
    private readonly Option<string?> _from = new("--from")
    {
        HelpName = "UNIT",
        Description = $"The unit of VALUE: {string.Join(", ", Unit.All.Select(u => u.Typed[^1]))}.",
    };
    private readonly Option<string?> _to = TextOption.Create("--to", "UNIT", "The unit wanted.");

    public ConvertCommand()
        : base("convert", "Turn a cup's seconds, Krebs units, a torque, a fall or a slump into a viscosity, or a value into "
            + "another unit.", Example)
    {
        Take(
            _value, _method, _density, _factor, _torque, _speed, _ball, _ballDensity, _fall, _jar, _height, _diameter, _temperature,
            _reference, _coefficient, _from, _to);
        _method.AcceptOnlyFromAmong([.. Method.All.Select(m => m.Id).Where(id => id != Method.Direct.Id)]);
        Validators.Add(result =>
        {
            if (result.GetResult(_method) is not null == (result.GetResult(_from) is not null && result.GetResult(_to) is not null))
            {
                result.AddError("convert needs either --method, or --from and --to");
            }
        });
    }

    protected override ExitCode Run(Invocation call)
    {
        var known = call.Value(_density) is { } d ? Density.FromGramsPerMilliliter(d) : (Density?)null;
        if (call.Value(_method) is not { } id)
        {
            return UnitConversion.Run(call, call.Value(_value), call.Value(_from)!, call.Value(_to)!, known);
        }

        var how = Method.Find(id)!;
        string? error = null;
        var scale = how.Scales[0];
        var typed = scale.HasSpeed && call.Value(_torque) is { } percent
            ? percent
            : TypedNumber.Read(call.Value(_value) ?? "", new(scale.Unit, 0, 1e12, Above: true), out error);
        if (typed is not { } number)
        {
            return call.Refuse($"{error} ({id} shows {ReadingWords.Typed(how)})");
        }

        var conversion = how.Scales[0].HasSpeed
            ? RotationalTorque.Convert(Percentage.FromPercent(number), Setup(call).PerPercentTorque, call.Value(_speed))
            : Conversions.Of(how, how.Scales[0].Make(number), Setup(call), known);
        if (conversion is not Conversion.Converted { Reading: var reading })
        {
            return call.Refuse(MethodWords.Of(((Conversion.Refused)conversion).Reason));
        }

        ReferenceValue? at = null;
        if (call.Value(_temperature) is { } celsius)
        {
            var (read, wanted) = (Temperature.FromCelsius(celsius), Temperature.FromCelsius(call.Value(_reference) ?? 23));
            var coefficient = call.Value(_coefficient) is { } k ? TemperatureCoefficient.Stated(k) : TemperatureCoefficient.Default;
            at = ReferenceValue.Of(reading, read, wanted, coefficient);
            if (at is null)
            {
                return call.Refuse(MethodWords.TooFar(read, wanted));
            }
        }

        return call.Answer(
            () => ConvertAnswer.Of(how, number, reading, at), t => ConvertText.Write(t, how, number, reading, at),
            reading.Warnings.Select(MethodWords.Of));
    }

    private MethodSetup Setup(Invocation call) => new()
    {
        PerPercentTorque = call.Value(_factor) is { } f ? Viscosity.FromMilliPascalSeconds(f) : null,
        BallDiameter = Size(call.Value(_ball)),
        BallDensity = call.Value(_ballDensity) is { } d ? Density.FromGramsPerMilliliter(d) : null,
        Fall = Size(call.Value(_fall)),
        JarDiameter = Size(call.Value(_jar)),
        CylinderHeight = Size(call.Value(_height)),
        CylinderDiameter = Size(call.Value(_diameter)),
    };

    private static Length? Size(double? millimeters) => millimeters is { } mm ? Length.FromMillimeters(mm) : null;
}

/// <summary>A converted reading as a person reads it.</summary>
internal static class ConvertText
{
    private const int Indent = 15;

    public static void Write(CallOutput terminal, Method method, double value, ConvertedReading reading, ReferenceValue? at)
    {
        terminal.Line(Say($"{value:0.######} {ReadingWords.Typed(method)} by {method.Id}"));
        terminal.Line();
        if (reading.Kinematic is { } kinematic)
        {
            terminal.Row(Say("Kinematic"), $"{Shown.Number(kinematic.SquareMillimetersPerSecond)} mm²/s", Indent);
        }

        terminal.Row(Say("Dynamic"), reading switch
        {
            { Dynamic: { } dynamic } => Shown.Body(dynamic),
            { YieldStress: { Pascals: var pascals } } => Say($"none: a slump gives a yield stress, {Shown.Number(pascals)} Pa"),
            _ => Say("give --density for it"),
        }, Indent);
        if (at is not null)
        {
            var brought = reading switch
            {
                { Dynamic: { } dynamic } => Shown.Body(Viscosity.FromMilliPascalSeconds(dynamic.MilliPascalSeconds * at.Factor)),
                { YieldStress: { } stress } => $"{Shown.Number(stress.Pascals * at.Factor)} Pa",
                _ => $"{Shown.Number(reading.Kinematic!.Value.SquareMillimetersPerSecond * at.Factor)} mm²/s",
            };
            terminal.Row(
                Say("At reference"),
                Say($"{brought} at {at.At.Celsius:0.#} °C, uncertain by {at.Uncertainty.Percent:0.0} %"), Indent);
        }

        terminal.Row(Say("Uncertainty", "row"), Say(
            $"{reading.Uncertainty.Percent:0.0} % (one standard deviation): repeatability {reading.Repeatability.Percent:0.#} %, this "
                + $"reading {reading.ReadingUncertainty.Percent:0.0} %, calibration and formula "
                + $"{reading.CalibrationUncertainty.Percent:0.#} %"), Indent);
        terminal.Row(Say("Shear", "row"), MethodWords.Shear(reading), Indent);
        if (reading.Better is { } better)
        {
            terminal.Row(Say("Better", "row"), MethodWords.Of(better), Indent);
        }

        terminal.Row(Say("Source", "row"), MethodWords.Source(reading), Indent);
    }
}

/// <summary>One value to another unit.</summary>
internal static class UnitConversion
{
    public static ExitCode Run(Invocation call, string? typed, string from, string to, Density? density)
    {
        if (TypedNumber.Read(typed ?? "", NumberRange.Any, out var error) is not { } number)
        {
            return call.Refuse(error!);
        }

        var value = (decimal)number;
        if (Unit.Find(from) is not { } given || Unit.Find(to) is not { } wanted)
        {
            return call.Refuse($"read '{(Unit.Find(from) is null ? from : to)}', expected a unit: "
                + $"{string.Join(", ", Unit.All.SelectMany(u => u.Typed))}");
        }

        if (given.Kind != UnitKind.Temperature && value < 0)
        {
            return call.Refuse($"read '{typed}', expected 0 or more {given.Symbol}");
        }

        if (given.To(wanted, value, density) is not { } result)
        {
            return call.Refuse(density is null && given.To(wanted, value, Density.FromGramsPerMilliliter(1)) is not null
                ? $"{given.Symbol} to {wanted.Symbol} needs --density"
                : $"{given.Symbol} and {wanted.Symbol} don't measure the same thing");
        }

        // The grain of decimal arithmetic is far below what anybody measures.
        var shown = decimal.Round(result, 12);
        return call.Answer(
            () => new UnitAnswer((double)value, given.Symbol, (double)shown, wanted.Symbol),
            terminal => terminal.Line($"{Text(value)} {given.Symbol} = {Text(shown)} {wanted.Symbol}"));
    }

    private static string Text(decimal value) => value.ToString("0.############", Numbers);
}
