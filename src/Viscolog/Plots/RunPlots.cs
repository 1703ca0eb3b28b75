using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The pictures of runs.</summary>
internal static class RunPlots
{
    /// <summary>The pictures that there are of runs: a run with two thickeners has its own, and none laid over others.</summary>
    public static ImmutableArray<PlotKind> Kinds(IReadOnlyList<RunPicture> runs) => runs switch
    {
        [{ Plane: not null }] => [PlotKind.Dose, PlotKind.Map],
        _ when runs.All(r => r.Plane is null) => [PlotKind.Dose, PlotKind.Settling, PlotKind.Residuals, PlotKind.String],
        _ => [],
    };

    /// <summary>What shows a run at a glance.</summary>
    public static Picture Usual(RunPicture run) => Of([run], run.Plane is null ? PlotKind.Dose : PlotKind.Map);

    /// <summary>The picture of one run, or of several laid over each other.</summary>
    /// <param name="runs">At least one; the kind is one of their <see cref="Kinds"/>.</param>
    /// <param name="kind">Which picture.</param>
    /// <exception cref="ArgumentException">There is no run, or no such picture of it.</exception>
    public static Picture Of(IReadOnlyList<RunPicture> runs, PlotKind kind)
    {
        if (runs.Count == 0 || !Kinds(runs).Contains(kind))
        {
            throw new ArgumentException("needs at least one run, and a kind that there is of it", nameof(runs));
        }

        return kind switch
        {
            PlotKind.Map => MapPlot.Of(runs[0]),
            PlotKind.Dose when runs[0].Plane is not null => SlicePlot.Of(runs[0]),
            PlotKind.Settling => SettlingPlot.Of(runs),
            PlotKind.Residuals => ResidualPlot.Of(runs),
            PlotKind.String => StringPlot.Of(runs),
            _ => DosePlot.Of(runs),
        };
    }
}

/// <summary>Which picture of a run.</summary>
internal enum PlotKind
{
    /// <summary>Body over dose.</summary>
    Dose,

    /// <summary>Value over standing time, one trace a step.</summary>
    Settling,

    /// <summary>Standardised residual over dose.</summary>
    Residuals,

    /// <summary>String length over dose.</summary>
    String,

    /// <summary>The two doses of a run with two thickeners, with contours of body and the band of the string.</summary>
    Map,
}

/// <summary>What pictures of runs have in common: how runs are named, and the axes.</summary>
/// <param name="runs">What is drawn.</param>
internal sealed class RunFrame(IReadOnlyList<RunPicture> runs)
{
    /// <summary>The share of the width before dose 0 or time 0.</summary>
    public const double Room = 0.02;

    /// <summary>What ends the words of a method whose reading is a yield stress.</summary>
    private const string OverRate = ": yield stress over 1/s";

    private const int NameColumns = 36;
    private const int ShortColumns = 12;

    /// <summary>Whether there is one run only.</summary>
    public bool IsAlone => runs.Count == 1;

    /// <summary>Whether all runs dose the same.</summary>
    public bool IsOneThickener => Same(p => p.Thickener) is not null;

    public string Title => IsAlone ? Name(runs[0].Name) : Say($"{runs.Count} runs");

    private string? Thickener => Same(p => PlainText.Clean(p.Thickener));

    private string? Celsius => Same(p => PlotText.Celsius(p.ReferenceTemperature));

    /// <summary>A title, or what stands for it.</summary>
    public static string Name(string? name) => PlainText.Clean(name ?? "") is { Length: > 0 } clean
        ? clean
        : Say("Run without a name");

    /// <summary>The place of a run where there are several.</summary>
    public int? Of(int place) => IsAlone ? null : place;

    /// <summary>What was measured and how, then notes.</summary>
    public string Subtitle(IEnumerable<string> notes)
    {
        var thickener = Thickener is { } same ? PlainText.Shorten(same, NameColumns) : Say("thickeners differ");
        var celsius = Celsius is { } one ? Say($"values at {one}") : Say("temperatures differ");
        var method = Same(p => Method(p) ?? "") ?? Say("methods differ");
        return string.Join(" · ", new[] { thickener, celsius, method }.Where(part => part.Length > 0).Concat(notes));
    }

    /// <summary>The run's name, short enough for a legend, with what sets it apart from the others.</summary>
    public string Label(RunPicture run)
    {
        string?[] apart =
        [
            Thickener is null ? PlainText.Shorten(PlainText.Clean(run.Thickener), ShortColumns) : null,
            Celsius is null ? PlotText.Celsius(run.ReferenceTemperature) : null,
        ];
        var more = string.Join(", ", apart.OfType<string>());
        return PlainText.Shorten(Name(run.Name), NameColumns) + (more.Length > 0 ? $" ({more})" : "");
    }

    /// <summary>Whose something is, in few words: the names of the runs, or the first and how many more.</summary>
    /// <param name="places">The places of at least one run.</param>
    public string Whose(IReadOnlyList<int> places)
    {
        string[] names = [.. places.Select(i => Label(runs[i]))];
        var all = string.Join(", ", names);
        return names.Length == 1 || all.Length <= NameColumns ? all : Say($"{names[0]} and {names.Length - 1} more");
    }

    /// <summary>The same in characters: the letters that stand for the runs.</summary>
    /// <param name="places">The places of at least one run.</param>
    /// <param name="first">The letter of the first run.</param>
    public static string Letters(IReadOnlyList<int> places, char first) => string.Concat(places.Select(i => Letter(i, first)));

    /// <summary>A letter for each of several runs or steps.</summary>
    public static char Letter(int place, char first = 'a') => (char)((place < 26 ? first : 'A') + (place % 26));

    /// <summary>Each run's line in the legend; none for a single one.</summary>
    public IEnumerable<Element> Keys(KeyLook look)
        => IsAlone ? [] : runs.Select((r, i) => new Element.RunKey(i, look) { Key = new(Label(r), r.Name ?? Say("without a name")) });

    public Axis Viscosity(double low, double high)
    {
        var method = IsAlone && Method(runs[0]) is { } how ? Say($" by {how}", "method") : "";
        var (title, brief) = Celsius is { } celsius
            ? (Say($"Viscosity at {celsius}, {PlotText.Unit}"), Say($"{PlotText.Unit} at {celsius}", "axis"))
            : (Say($"Viscosity, {PlotText.Unit}"), Say($"{PlotText.Unit} at different temperatures"));
        return new(title, brief + method, low, high, IsLogarithmic: true);
    }

    public Axis Dose(double end)
    {
        var title = Thickener is { Length: > 0 } thickener
            ? Say($"Dose of {PlainText.Shorten(thickener, NameColumns)}, g per 100 g of base (%)")
            : Say("Dose, g per 100 g of base (%)");
        return new(title, Say("dose, %"), 0, end) { Room = Room };
    }

    /// <summary>The readings of a run, doubted ones apart.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="of">Which run or step; null for the only one.</param>
    /// <param name="place">Where each stands.</param>
    public static IEnumerable<Element.Marks> Readings(IEnumerable<PicturedReading> readings, int? of, Func<PicturedReading, Spot> place)
    {
        var all = readings.ToLookup(r => r.Doubted);
        Element.Marks Marks(Meaning meaning, LegendLine? key)
            => new(meaning, of, [.. all[meaning == Meaning.Doubted].Select(place)]) { Key = key };
        Element.Marks[] marks =
        [
            Marks(Meaning.Reading, of is null ? new(Say("reading"), Say("reading")) : null),
            Marks(Meaning.Doubted, new(of is null ? Say("doubted reading") : null, Say("doubted"))),
        ];
        return marks.Where(m => !m.Points.IsEmpty);
    }

    /// <summary>How a run was read; null for viscosities as they are.</summary>
    private static string? Method(RunPicture run) => run.Method is { } how && how.EndsWith(OverRate, StringComparison.Ordinal)
        ? Say($"{how[..^OverRate.Length]}: yield stress over 1/s")
        : run.Method;

    /// <summary>The value that all runs share; null where they differ.</summary>
    private string? Same(Func<RunPicture, string> what)
        => runs.Select(what).Distinct(StringComparer.Ordinal).Count() == 1 ? what(runs[0]) : null;
}
