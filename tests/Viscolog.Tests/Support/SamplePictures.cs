using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Quantities;

namespace Viscolog.Tests.Support;

/// <summary>Invented pictures of runs with numbers as a bench would give them.</summary>
internal static class SamplePictures
{
    private static readonly Percentage Level = Percentage.FromPercent(90);

    /// <summary>A run at its fourth step: sigmoid from 850 to 12 000 mPa·s, target, limit and next addition, one doubted reading.</summary>
    public static RunPicture Full(string? name = "Quay Street glaze gel 03") => new(name, "TA", Temperature.FromCelsius(23))
    {
        Readings =
        [
            Reading(0, 0, 60, 1.01, 0.3), Reading(1, 0.5, 30, 0.97, -0.9), Reading(1, 0.5, 120, 1.02, 0.5),
            Reading(2, 1.2, 30, 0.93, -1.4), Reading(2, 1.2, 90, 0.98, -0.3), Reading(2, 1.2, 240, 1.03, 0.8),
            Reading(3, 1.8, 30, 0.85, -0.4), Reading(3, 1.8, 120, 1.45, 3.6, doubted: true), Reading(3, 1.8, 300, 0.99, -0.2),
        ],
        Steps = [Step(0, 0, 0.05), Step(1, 0.5, 0.05), Step(2, 1.2, 0.04), Step(3, 1.8, 0.05)],
        Curve = Curve(12_000, 2, 4.5),
        Strings = [String(1, 0.5, 8), String(2, 1.2, 21), String(2, 1.2, 26), String(3, 1.8, 44)],
        TargetString = new(Length.FromMillimeters(40), Length.FromMillimeters(70)),
        Target = ViscosityBand.Around(Mpas(12_000), Percentage.FromPercent(15)),
        Limit = new DoseLimit(
            Dose.FromPercent(3.6), new LimitReason.Flattens()),
        Next = new NextIncrement(Dose.FromPercent(1.8), Mpas(At(1.8)), Dose.FromPercent(2.4), Around(At(2.4), 0.22)),
    };

    /// <summary>Nothing measured, nothing stated.</summary>
    public static RunPicture Empty() => new(null, "TA", Temperature.FromCelsius(23));

    /// <summary>One reading without a wait, no curve.</summary>
    public static RunPicture OneReading() => new("first look", "TA", Temperature.FromCelsius(23))
    {
        Readings = [new PicturedReading(0, Dose.None, null, Mpas(850), Mpas(850), 0, Doubted: false)],
        Steps = [new PicturedStep(0, Dose.None, Around(850, 0.1), [])],
    };

    /// <summary>Several runs that differ a little.</summary>
    public static IReadOnlyList<RunPicture> Several(int count) => [.. Enumerable.Range(0, count).Select(i => Variant(i))];

    /// <summary>Three runs with limits and targets of their own; the last went over and was let down.</summary>
    public static IReadOnlyList<RunPicture> Apart()
    {
        var runs = Several(3);
        return
        [
            runs[0],
            runs[1] with { Target = ViscosityBand.Around(Mpas(9000), Percentage.FromPercent(15)) },
            runs[2] with
            {
                Target = ViscosityBand.Around(Mpas(4000), Percentage.FromPercent(10)),
                LetDowns = [new(Dose.FromPercent(3.2), Mpas(11_000), Dose.FromPercent(2.4), Mpas(5500))],
            },
        ];
    }

    /// <summary>The full run after it went over and was let down twice, with more base advised.</summary>
    public static RunPicture LetDown() => Full() with
    {
        LetDowns =
        [
            new(Dose.FromPercent(3.4), Mpas(11_000), Dose.FromPercent(2.9), Mpas(7300)),
            new(Dose.FromPercent(2.9), Mpas(7300), Dose.FromPercent(2.4), Mpas(At(2.4))),
        ],
        Next = new NextIncrement(Dose.FromPercent(2.4), Mpas(At(2.4)), Dose.FromPercent(1.8), Around(At(1.8), 0.2)),
        Limit = new DoseLimit(Dose.FromPercent(4.2), new LimitReason.UsualRange()),
    };

    /// <summary>A value in mPa·s.</summary>
    public static Viscosity Mpas(double value) => Viscosity.FromMilliPascalSeconds(value);

    private static RunPicture Variant(int i)
    {
        var top = 12_000 * (1 + (0.35 * i));
        var middle = 2 + (0.25 * i);
        double[] doses = [0, 0.6 + (0.1 * i), 1.5, 2.2 + (0.1 * i)];
        return new($"glaze gel {i + 1:00}", "TA", Temperature.FromCelsius(23))
        {
            Readings =
            [
                .. doses.Select(
                    (d, s) => new PicturedReading(
                        s,
                        Dose.FromPercent(d),
                        TimeSpan.FromSeconds(60),
                        Mpas(At(d, top, middle) * 0.98),
                        Mpas(At(d, top, middle)),
                        -0.4,
                        Doubted: i == 1 && s == 2)),
            ],
            Steps = [.. doses.Select((d, s) => new PicturedStep(s, Dose.FromPercent(d), Around(At(d, top, middle), 0.05), []))],
            Curve = Curve(top, middle, 4.5),
            Target = ViscosityBand.Around(Mpas(12_000), Percentage.FromPercent(15)),
            Limit = new DoseLimit(Dose.FromPercent(4 - (0.1 * i)), new LimitReason.UsualRange()),
        };
    }

    private static PicturedReading Reading(int step, double dose, double wait, double factor, double residual, bool doubted = false)
    {
        var expected = At(dose) * (dose > 0 ? Way(wait) : 1);
        return new(step, Dose.FromPercent(dose), TimeSpan.FromSeconds(wait), Mpas(expected * factor), Mpas(expected), residual, doubted);
    }

    private static PicturedString String(int step, double dose, double length)
        => new(step, Dose.FromPercent(dose), Length.FromMillimeters(length));

    private static PicturedStep Step(int place, double dose, double spread)
    {
        double[] waits = dose > 0 ? [5, 10, 20, 30, 45, 60, 90, 120, 180, 240, 300] : [];
        return new(
            place,
            Dose.FromPercent(dose),
            Around(At(dose), spread),
            [.. waits.Select(w => new TimedEstimate(TimeSpan.FromSeconds(w), Around(At(dose) * Way(w), spread)))]);
    }

    private static System.Collections.Immutable.ImmutableArray<CurveSample> Curve(double top, double middle, double end) =>
    [
        .. Enumerable.Range(0, 91).Select(i => i * end / 90).Select(d =>
        {
            var spread = 0.05 + (0.12 * Math.Max(0, d - 1.8));
            var median = At(d, top, middle);
            return new CurveSample(
                Dose.FromPercent(d), Around(median, spread), Around(median, Math.Sqrt((spread * spread) + (0.16 * 0.16))));
        }),
    ];

    private static double Way(double wait) => 1 - (0.25 * Math.Exp(-wait / 70));

    private static double At(double dose, double top = 12_000, double middle = 2)
        => 850 * Math.Exp(Math.Log(top * 1.2 / 850) / (1 + Math.Pow(middle / Math.Max(dose, 1e-9), 2.2)));

    private static Estimate Around(double median, double spread)
        => new(Mpas(median), Mpas(median * Math.Exp(-spread)), Mpas(median * Math.Exp(spread)), Level);
}
