using Viscolog.Core.Practice;

namespace Viscolog.Benchmarks;

/// <summary>
/// A published series of viscosity over concentration, played as a pot: interpolated in ln, kinked by up to 10 % half-way between
/// neighbours.
/// </summary>
internal sealed record PublishedSeries(string Name, double[] Concentrations, double[] Viscosities)
{
    /// <summary>
    /// Glycerol in water by mass: Segur and Oberstar, Industrial and Engineering Chemistry 43 (1951) 2117–2120; the row of 65 % at 40 °C is
    /// left out, it is out of line with its neighbours. Poly(vinyl alcohol) in water, g/L: computed from Pritchard's empirical equation
    /// (Poly(vinyl alcohol), Macdonald 1970). Suspension: computed from Krieger and Dougherty's law, Transactions of the Society of
    /// Rheology 3 (1959) 137–152, with [η] 2.5 and φm 0.64.
    /// </summary>
    public static readonly PublishedSeries[] All =
    [
        new(
            "glycerol in water, 10 °C",
            [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1],
            [1.308, 1.74, 2.41, 3.49, 5.37, 9.01, 17.4, 25.3, 38.8, 65.2, 116, 223, 498, 1270, 3900]),
        new(
            "glycerol in water, 20 °C",
            [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1],
            [1.005, 1.31, 1.76, 2.5, 3.72, 6, 10.8, 15.2, 22.5, 35.5, 60.1, 109, 219, 523, 1410]),
        new(
            "glycerol in water, 30 °C",
            [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1],
            [0.8007, 1.03, 1.35, 1.87, 2.72, 4.21, 7.19, 9.85, 14.1, 21.2, 33.9, 58, 109, 237, 612]),
        new(
            "glycerol in water, 40 °C",
            [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1],
            [0.656, 0.826, 1.07, 1.46, 2.07, 3.1, 5.08, 9.4, 13.6, 20.8, 33.5, 60, 121, 284]),
        new("poly(vinyl alcohol) 20000, 20 °C", [0, 5, 10, 20, 40, 60], [1.0016, 1.14158, 1.28683, 1.59313, 2.26899, 3.02916]),
        new("poly(vinyl alcohol) 20000, 30 °C", [0, 5, 10, 20, 40, 60], [0.7972, 0.901161, 1.00872, 1.23461, 1.72955, 2.282]),
        new("poly(vinyl alcohol) 80000, 20 °C", [0, 5, 10, 20, 40, 60], [1.0016, 1.35504, 1.74833, 2.65443, 4.94474, 7.87253]),
        new("poly(vinyl alcohol) 80000, 30 °C", [0, 5, 10, 20, 40, 60], [0.7972, 1.05888, 1.34774, 2.007, 3.65165, 5.73116]),
        new(
            "suspension",
            [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.55, 0.6],
            [1, 1.139, 1.31237, 1.82123, 2.7512, 4.80341, 11.3784, 23.0728, 84.4485]),
    ];

    /// <summary>
    /// Thickened liquids, a power law of concentration between neighbours above the first dose. Gum ghatti: table after Whistler,
    /// Industrial Gums (25 °C). Konjac glucomannan in water and tea: Gong and others, Food Science 24(4) (2003) 23 (10 1/s). Graphene in
    /// glycol and in oil: Entropy 23(8) (2021) 979, table 5 (10 1/s and at rest). Xanthan and iota carrageenan in a mix: PMC10333429, table
    /// 4. Alginate: Gerum and others, eLife 11 (2022) e78823. Where the source has no reading without thickener, the solvent's is from
    /// memory (water 1 mPa·s, tea 1, glycol 20).
    /// </summary>
    public static readonly PublishedSeries[] Thickeners =
    [
        new("gum ghatti", [0, 1, 2, 3], [1, 2, 35, 288]) { IsPowerLaw = true },
        new("konjac in water", [0, 0.1, 0.15, 0.2], [1, 10.33, 21.55, 83.64]) { IsPowerLaw = true },
        new("konjac in tea", [0, 0.1, 0.15, 0.2], [1, 5.32, 8.80, 22.68]) { IsPowerLaw = true },
        new("graphene in glycol, 10 1/s", [0, 0.1, 0.25, 0.5, 1], [20, 25.05, 87.9, 368.1, 1647]),
        new("graphene in glycol, at rest", [0, 0.1, 0.25, 0.5, 1], [20, 353.5, 873.1, 19776, 117110]),
        new("graphene in oil, 10 1/s", [0, 0.1, 0.25, 0.5, 1], [120, 125.8, 205.8, 287.1, 1966]),
        new("graphene in oil, at rest", [0, 0.1, 0.25, 0.5, 1], [120, 139.5, 1012, 1779.5, 27642]),
        new("xanthan in a mix", [0, 0.2, 0.4], [3.3, 66.6, 398.5]) { IsPowerLaw = true },
        new("iota carrageenan in a mix", [0, 0.2, 0.55], [3.3, 68.1, 211.2]) { IsPowerLaw = true },
        new("alginate in water", [0, 1.5, 2.5], [1, 2200, 9200]) { IsPowerLaw = true },
    ];

    /// <summary>Whether ln of the viscosity is straight over the logarithm of the concentration between neighbours.</summary>
    public bool IsPowerLaw { get; private init; }

    /// <summary>The series as a law whose base has 500 mPa·s and whose last concentration is the range top.</summary>
    public HiddenLaw ToLaw(Random random)
    {
        if (Thickeners.Contains(this))
        {
            return ToThickenerLaw();
        }

        var z = new List<double>();
        var ln = new List<double>();
        for (var i = 0; i < Concentrations.Length; i++)
        {
            if (i > 0)
            {
                z.Add((Concentrations[i - 1] + Concentrations[i]) / 2 / Concentrations[^1]);
                ln.Add((Math.Log(Viscosities[i - 1] * Viscosities[i]) / 2) + (0.2 * random.NextDouble()) - 0.1);
            }

            z.Add(Concentrations[i] / Concentrations[^1]);
            ln.Add(Math.Log(Viscosities[i]));
        }

        var shift = Math.Log(500) - ln[0];
        return HiddenLaws.Table(Name.Split(' ')[0], [.. z], [.. ln.Select(u => u + shift)]);
    }

    /// <summary>The series as it is; below the first dose ln(1 + (x/x₀)^p), p that of the first interval and at least 1.</summary>
    private HiddenLaw ToThickenerLaw()
    {
        var top = Concentrations[^1];
        double Ln(int i) => Math.Log(Viscosities[i]);
        var power = Math.Max(1, (Ln(2) - Ln(1)) / Math.Log(Concentrations[2] / Concentrations[1]));
        return new(Name, z =>
        {
            var x = z * top;
            if (x <= Concentrations[1])
            {
                return Ln(0) + Math.Log(1 + ((Math.Exp(Ln(1) - Ln(0)) - 1) * Math.Pow(Math.Max(0, x) / Concentrations[1], power)));
            }

            var right = 2;
            while (right < Concentrations.Length - 1 && Concentrations[right] < x)
            {
                right++;
            }

            var (from, to) = (Concentrations[right - 1], Concentrations[right]);
            var part = IsPowerLaw ? Math.Log(x / from) / Math.Log(to / from) : (x - from) / (to - from);
            return Ln(right - 1) + ((Ln(right) - Ln(right - 1)) * part);
        });
    }
}
