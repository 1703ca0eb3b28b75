using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Measuring;
using Viscolog.OilFiles;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>How the bench's methods read certified oils: log a reading, make one void, see the bias of each.</summary>
internal sealed class DriftCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- import sample-runs/oils --log my-log && dotnet run --project "
        + "src/Viscolog -- drift --log my-log";

    private readonly Option<string?> _method = TextOption.Create(
        "--method", "ID", "Log a reading by this method; the next options belong to it.");
    private readonly Option<double?> _rpm = NumberOption.Create(
        "--rpm",
        "RPM",
        "Speed in 1/min, if a torque is read.",
        new("1/min", 1e-6, 1e6));
    private readonly Option<string?> _oil = TextOption.Create("--oil", "NAME", "The oil, as on its bottle.");
    private readonly Option<double?> _certified = NumberOption.Create(
        "--certified", "MPAS", "The certificate's viscosity in mPa·s.", NumberRange.Viscosity);
    private readonly Option<double?> _certifiedAt = NumberOption.Create(
        "--certified-temp", "C", "The certificate's temperature in °C.", new("°C", -273, 1e4));
    private readonly Option<double?> _uncertainty = NumberOption.Create(
        "--uncertainty", "PCT",
        FormattableString.Invariant($"The certificate's expanded uncertainty (k = 2) in %; default {OilCells.UsualUncertainty}."),
        new("%", 0.001, 50));
    private readonly Option<double?> _coefficient = NumberOption.Create("--coefficient", "K", "The oil's temperature coefficient in K; "
        + "without it read the oil within 0.5 °C of the certificate.", new("K", 0, 30_000));
    private readonly Option<double?> _read = NumberOption.Create(
        "--read", "VALUE", "What the method showed: mPa·s, seconds of a cup, KU, or % of torque if --rpm is given.", new("", 1e-3, 1e12));
    private readonly Option<double?> _temperature = NumberOption.Create(
        "--temp",
        "C",
        "The oil's temperature in °C.",
        new("°C", -273, 1e4));
    private readonly Option<double?> _density = NumberOption.Create(
        "--density", "G_ML", "The oil's density in g/mL; cups need it.", new("g/mL", 1e-3, 1e3));
    private readonly Option<double?> _factor = NumberOption.Create(
        "--factor",
        "MPAS",
        "mPa·s for each % of torque.",
        NumberRange.Viscosity);
    private readonly Option<DateOnly?> _date = DayOption.Create("--date", "The day; default: today.");
    private readonly Option<string?> _note = TextOption.Create("--note", "TEXT", "A note.");
    private readonly Option<double?> _voided = NumberOption.Create("--void", "N", "Void the reading with this number.", new("", 1, 1e9));
    private readonly Option<string?> _why = TextOption.Create("--why", "TEXT", "Why it is voided.");

    public DriftCommand()
        : base("drift", "Check methods with certified oils: the bias of each and when it was last checked; verdicts use it.", Example)
        => Take(
            _method, _rpm, _oil, _certified, _certifiedAt, _uncertainty, _coefficient, _read, _temperature, _density, _factor, _date,
            _note, _voided, _why);

    protected override ExitCode Run(Invocation call)
    {
        var logs = call.Value(_method) is not null;
        if (logs && call.Value(_voided) is not null)
        {
            return call.Wrong("give --method with a reading, or --void, not both");
        }

        if (!logs && (call.Value(_read) ?? call.Value(_certified)) is not null)
        {
            return call.Wrong("a reading needs its --method");
        }

        return call.WithLog(logs || call.Value(_voided) is not null ? LogUse.Write : LogUse.Read, log => Run(call, log, logs, call.Today));
    }

    private ExitCode Run(Invocation call, BenchLog log, bool logs, DateOnly today)
    {
        if (logs && Reading(call, today) is var (row, refusal)
            && (row is null ? call.Refuse(refusal!) : Said(log.AddOil(row), call)) is not ExitCode.Done and var failed)
        {
            return failed;
        }

        if (call.Value(_voided) is { } number)
        {
            if (call.Value(_why) is not { Length: > 0 } reason)
            {
                return call.Wrong("--void needs --why");
            }

            if (Said(log.VoidOil((int)number, reason), call) is not ExitCode.Done and var unsaved)
            {
                return unsaved;
            }
        }

        var (drifts, oils) = (BenchKnowledge.Of(log).Drifts(), log.Oils());
        return call.Answer(
            () => new DriftsAnswer([.. drifts.Select(d => DriftAnswer.Of(d, today))], [.. oils.Select(OilAnswer.Of)]),
            terminal => Write(terminal, drifts, oils, today));
    }

    private static ExitCode Said(WriteOutcome outcome, Invocation call) => outcome switch
    {
        WriteOutcome.Saved => ExitCode.Done,
        WriteOutcome.SavedOnly saved => call.LogFailed(saved.Reason),
        _ => call.Refuse(outcome.Trouble!),
    };

    /// <summary>The reading as the options say it, by the rules of an oils file.</summary>
    private (OilRow? Row, string? Refusal) Reading(Invocation call, DateOnly today)
    {
        var id = call.Value(_method)!;
        var shown = call.Value(_rpm) is not null ? Core.Measuring.InstrumentScale.Torque.Name
            : Core.Measuring.Method.Find(id)?.Scales.FirstOrDefault(s => !s.HasSpeed)?.Name
                ?? Core.Measuring.InstrumentScale.Viscosity.Name;
        (string Column, string? Text)[] all =
        [
            (OilColumns.Method, id), (OilColumns.Oil, call.Value(_oil)), (OilColumns.Note, call.Value(_note)),
            (OilColumns.Date, (call.Value(_date) ?? today).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            (OilColumns.Certified, Text(_certified)), (OilColumns.CertifiedAt, Text(_certifiedAt)),
            (OilColumns.Uncertainty, Text(_uncertainty)), (OilColumns.Coefficient, Text(_coefficient)),
            (shown, Text(_read)), (Columns.Speed.Name, Text(_rpm)), (OilColumns.At, Text(_temperature)),
            (OilColumns.Density, Text(_density)), (OilColumns.Factor, Text(_factor)),
        ];
        var cells = all
            .Where(c => !string.IsNullOrWhiteSpace(c.Text)).ToImmutableDictionary(
                c => c.Column, c => c.Text!, StringComparer.OrdinalIgnoreCase);
        var findings = new Findings("drift");
        var row = OilCells.Read(
            cells, new(findings, new(',')), column => new(null, column, OneLine.Quoted(cells.GetValueOrDefault(column ?? "", ""))));
        return (row, findings.Refusal?.Text);

        string? Text(Option<double?> option) => call.Value(option) is { } value ? FileNumbers.Show(value) : null;
    }

    private static void Write(CallOutput terminal, IEnumerable<MethodDrift> drifts, IReadOnlyCollection<LoggedOil> oils, DateOnly today)
    {
        if (oils.Count == 0)
        {
            terminal.Line(Say("no certified oil has been read yet; 'viscolog drift --help' shows how to log one"));
            return;
        }

        foreach (var drift in drifts)
        {
            terminal.Wrapped(DriftWords.Of(drift, today), margin: 2);
        }

        terminal.Line();
        terminal.Table(DriftWords.Table(oils.Select(o => (o.Number, o.Row.Reading, o.Row.Void))));
    }
}
