using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>The part of the dose–viscosity plane that a picture shows.</summary>
/// <param name="Dose">The greatest dose, %; the least is 0.</param>
/// <param name="Low">The least viscosity, mPa·s.</param>
/// <param name="High">The greatest viscosity, mPa·s.</param>
internal sealed record DoseWindow(double Dose, double Low, double High)
{
    /// <summary>How far beyond readings and curve an uncertain band may push the axis; wider bands run out of the picture.</summary>
    private const double BandReach = 3;

    /// <summary>The share of the width kept for the region beyond the dose limit, so that its reason fits in.</summary>
    private const double LimitShare = 0.2;

    /// <summary>A window that holds all that is certain in the pictures, and bands as far as they do not drown it.</summary>
    public static DoseWindow Of(IReadOnlyList<RunPicture> pictures)
    {
        double[] firm = [.. pictures.SelectMany(Firm).Select(v => v.MilliPascalSeconds)];
        if (firm.Length == 0)
        {
            firm = [100, 100_000];
        }

        double[] loose = [.. pictures.SelectMany(Loose).Select(v => v.MilliPascalSeconds)];
        var low = Math.Max(firm.Min() / BandReach, loose.Append(firm.Min()).Min());
        var high = Math.Min(firm.Max() * BandReach, loose.Append(firm.Max()).Max());
        var pad = Math.Max(0.06 * Math.Log(high / low), 0.05);
        return new(DoseEnd(pictures), Math.Max(low * Math.Exp(-pad), 1e-9), Math.Min(high * Math.Exp(pad), 1e300));
    }

    private static double DoseEnd(IReadOnlyList<RunPicture> pictures)
    {
        var end = pictures.SelectMany(Doses).Select(d => d.Percent).DefaultIfEmpty(0).Max() * 1.03;
        var limits = pictures.Select(p => p.Limit?.Dose.Percent ?? 0).DefaultIfEmpty(0).Max();
        end = Math.Max(end, limits / (1 - LimitShare));
        return end > 0 ? end : 1;
    }

    private static IEnumerable<Dose> Doses(RunPicture p)
    {
        var doses = p.Readings.Select(r => r.Dose).Concat(p.Steps.Select(s => s.Dose)).Concat(p.Curve.Select(c => c.Dose));
        return p.Next is { } next ? doses.Append(next.To).Append(next.From) : doses;
    }

    private static IEnumerable<Viscosity> Firm(RunPicture p)
    {
        var values = p.Readings.Select(r => r.Value).Concat(p.Steps.Select(s => s.Settled.Median)).Concat(p.Curve.Select(c => c.Body.Median));
        values = p.Target is { } target ? values.Append(target.Low).Append(target.High) : values;
        return p.Next is { } next ? values.Append(next.Body).Append(next.Expected.Median) : values;
    }

    private static IEnumerable<Viscosity> Loose(RunPicture p)
    {
        var all = p.Curve.Select(c => c.Reading).Concat(p.Curve.Select(c => c.Body)).Concat(p.Steps.Select(s => s.Settled));
        all = p.Next is { } next ? all.Append(next.Expected) : all;
        return all.SelectMany(e => new[] { e.Low, e.High });
    }
}
