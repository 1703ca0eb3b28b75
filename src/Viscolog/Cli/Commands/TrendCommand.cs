using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Charting;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Store;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.TrendFiles;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A control chart of batches.</summary>
internal sealed class TrendCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- trend sample-runs/trend/lantern-gel-batches.csv --baseline 20";

    private readonly Argument<string?> _file = new("FILE")
    {
        Description = "A CSV file with a column 'batch' and a column of values.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<string?> _product = TextOption.Create(
        "--product", "NAME", "Instead of a file: the log's batches of this specification, each at the value that a check finds.");
    private readonly Option<double?> _baseline = NumberOption.Create(
        "--baseline", "N",
        FormattableString.Invariant($"Take the limits from the first N batches; default: the first {ControlChart.UsualBaseline}, or all."),
        new("", ControlChart.LeastBaseline, 1e6));
    private readonly Option<string[]> _leaveOut = new("--leave-out")
    {
        HelpName = "BATCH",
        Description = "Leave a batch whose cause was found out of the limits; may be given more than once.",
        Arity = ArgumentArity.OneOrMore,
    };
    private readonly Option<bool> _log = FlagOption.Create(
        "--log-scale", "Work on logarithms: the default, unless it is a pH or a value is 0 or less.");
    private readonly Option<bool> _linear = FlagOption.Create("--linear-scale", "Work on the values as they are.");
    private readonly Option<double?> _low = NumberOption.Create(
        "--low",
        "VALUE",
        "The lowest value accepted, for the capability; default: that of the file or the specification.",
        new("", -1e15, 1e15));
    private readonly Option<double?> _high = NumberOption.Create("--high", "VALUE", "The highest value accepted.", new("", -1e15, 1e15));
    private readonly Option<string?> _column = TextOption.Create(
        "--column", "NAME", "The file's column to chart; default: 'value', else a reading, else the first.");
    private readonly OutputOptions _output = new("Write a picture as well: .svg, .pdf or .png.", "picture");

    public TrendCommand()
        : base("trend", "Chart batches over time: individual values and moving ranges, limits, signals, capability.", Example)
        => Take([_file, _product, _baseline, _leaveOut, _log, _linear, _low, _high, _column, .. _output.All]);

    protected override ExitCode Run(Invocation call)
    {
        if (call.Optional(_file) is null == call.Value(_product) is null)
        {
            return call.Wrong("give either a FILE or --product NAME");
        }

        if (call.Value(_log) && call.Value(_linear))
        {
            return call.Wrong("give --log-scale or --linear-scale, not both");
        }

        var code = ExitCode.InputRefused;
        if ((call.Optional(_file) is { } path ? FromFile(path, call) : FromLog(call.Value(_product)!, call, out code)) is not { } source)
        {
            return code;
        }

        var request = new ChartRequest(
            source.Points, call.Value(_log) ? ChartScale.Log : call.Value(_linear) ? ChartScale.Linear : source.UsualScale)
        {
            Baseline = call.Value(_baseline) is { } n ? (int)n : null,
            LeftOut = [.. call.Value(_leaveOut) ?? []],
            Low = call.Value(_low) ?? source.Low,
            High = call.Value(_high) ?? source.High,
        };
        if (request.Baseline > source.Points.Length)
        {
            return call.Refuse(string.Create(CultureInfo.InvariantCulture, $"--baseline: read {request.Baseline}, expected at most "
                + $"{source.Points.Length}, as many batches as there are"));
        }

        var outcome = ControlChart.Of(request);
        return outcome is ChartOutcome.Charted { Chart: var chart }
            ? Answer(call, source, chart)
            : call.Refuse($"{call.Optional(_file) ?? source.Name}: {TrendWords.Of(((ChartOutcome.Refused)outcome).Reason)}");
    }

    private TrendSource? FromFile(string path, Invocation call)
    {
        switch (TrendFileReader.Read(path, call.Value(_column)))
        {
            case TableOutcome<TrendFile>.Read { File: var read }:
                return new(
                    read.Name, TrendColumns.Words(read.Column), read.Unit, read.Points,
                    read.UsualScale)
                { Low = read.Low, High = read.High, Warnings = read.Warnings };
            case TableOutcome<TrendFile>.Refused refused:
                call.Terminal.Fail(Failure.Of(refused.Refusal));
                return null;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    private static TrendSource? FromLog(string name, Invocation call, out ExitCode code)
    {
        code = ExitCode.LogUnusable;
        using var opened = call.OpenLog(LogUse.Read);
        if (opened is null)
        {
            return null;
        }

        code = ExitCode.InputRefused;
        var bench = BenchKnowledge.Of(opened);
        if (bench.Specification(name) is not { Body: { Band: var band } } specification)
        {
            call.Terminal.Fail(bench.UnknownSpecification(name));
            return null;
        }

        var trend = BenchKnowledge.Trend(opened, specification, call.Today);
        return new(specification.Name, "Viscosity", "mPa·s", trend.Points, ChartScale.Log)
        {
            Low = band.Low.MilliPascalSeconds,
            High = band.High.MilliPascalSeconds,
            Warnings = [.. trend.LeftOut.Select(TrendWords.LeftOut)],
        };
    }

    /// <summary>What was read, on the axis; a name that is not known is that of the file's column.</summary>
    private static string Named(string quantity) => quantity switch
    {
        "Viscosity" => Say("Viscosity"),
        "Efflux time" => Say("Efflux time"),
        "Krebs" => Say("Krebs"),
        "Torque" => Say("Torque"),
        "Reading" => Say("Reading"),
        "String length" => Say("String length"),
        "Value" => Say("Value"),
        _ => quantity,
    };

    private ExitCode Answer(Invocation call, TrendSource source, ControlChart chart)
    {
        var picture = new TrendPicture(
            source.Name ?? Say("Batches"),
            source.Unit.Length == 0 ? Named(source.Quantity) : $"{Named(source.Quantity)}, {source.Unit}",
            chart);
        var written = _output.Write(call, (path, force) => PictureFile.Write(picture.Picture(), path, force));
        return written is { Reason: { } reason }
            ? call.Refuse(reason)
            : call.Answer(
                () => TrendAnswer.Of(source.Name, source.Unit, chart, written?.Made, source.Warnings),
                terminal => TrendText.Write(terminal, picture, source.Unit, written?.Made),
                source.Warnings);
    }
}

/// <summary>Values of batches that a command names.</summary>
/// <param name="Name">What they are of; null where nobody says.</param>
/// <param name="Quantity">What was read.</param>
/// <param name="Unit">The values' unit; empty where none is known.</param>
/// <param name="Points">The values.</param>
/// <param name="UsualScale">The scale where none is asked for.</param>
internal sealed record TrendSource(string? Name, string Quantity, string Unit, ImmutableArray<ChartPoint> Points, ChartScale UsualScale)
{
    public double? Low { get; init; }

    public double? High { get; init; }

    public ImmutableArray<string> Warnings { get; init; } = [];
}

/// <summary>A control chart as a person reads it.</summary>
internal static class TrendText
{
    private const int ChartLines = 24;
    private const int Indent = 16;

    public static void Write(CallOutput terminal, TrendPicture picture, string unit, string? written)
    {
        var chart = picture.Chart;
        terminal.Line($"{PlainText.Shorten(PlainText.Clean(picture.Title), 40)} · "
            + $"{Count.Of(chart.Points.Length, Say("batch"), Say("batches"))} · "
            + (picture.IsLog ? Say("log scale") : Say("linear scale")));
        terminal.Line();
        var signals = TrendWords.Signals(chart).ToList();
        terminal.Emphasized("  " + (signals.Count == 0
            ? TrendWords.IsShort(chart) ? Say("TOO FEW BATCHES to call it in control; no rule is broken so far.", "headline")
            : Say("IN CONTROL: no rule is broken.", "headline")
            : Count.Of(signals.Count, Say("SIGNAL"), Say("SIGNALS"))));
        foreach (var signal in signals)
        {
            terminal.Row("", signal, Indent);
        }

        if (signals.Count > 0)
        {
            terminal.Row(Say("By chance"), TrendWords.ByChance, Indent);
        }

        terminal.Line();
        terminal.Row(Say("Limits"), TrendWords.Limits(chart, unit), Indent);
        terminal.Row(Say("Moving range", "row"), TrendWords.Range(chart, unit), Indent);
        if (chart.Cpk is { } cpk)
        {
            terminal.Row(
                Say("Wanted"),
                Say($"{End(chart.Low)} to {End(chart.High)}") + (unit.Length == 0 ? "" : " " + unit),
                Indent);
            terminal.Row("Cpk", Say($"{TrendWords.Index(cpk)}, by the moving range"), Indent);
            terminal.Row("Ppk", Say($"{TrendWords.Index(chart.Ppk!)}, by the deviation of all of them"), Indent);
        }

        foreach (var warning in chart.Warnings)
        {
            terminal.Row(Say("Note", "remark"), TrendWords.Of(warning), Indent);
        }

        terminal.Line();
        terminal.Chart(picture.Picture(), ChartLines);
        terminal.Written(written);
    }

    private static string End(double? wanted) => wanted is { } value ? Shown.Round(value) : Say("any", "end");
}
