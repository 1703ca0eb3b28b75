using System.Globalization;
using System.Text;

namespace Viscolog.Benchmarks.Beside;

/// <summary>Invented numbers that all sides are given.</summary>
internal static class BesideData
{
    /// <summary>Stress in Pa over rate in 1/s: 8 + 3.5·γ^0.55 with some 2 % of scatter.</summary>
    public static (double Rate, double Stress)[] Flow { get; } =
    [
        (0.1, 9.1), (0.3, 9.6), (1, 11.7), (3, 14.2), (10, 20.6), (30, 30.3), (100, 52.6), (300, 87.9), (1000, 165),
    ];

    /// <summary>A run of twelve settled readings on a sigmoid with some 3 % of scatter.</summary>
    public static string Run { get; } = MakeRun();

    /// <summary>A run file of so many readings.</summary>
    public static string LongRun(int rows)
    {
        var text = new StringBuilder("# name: long\n# base_g: 120\n# thickener: Sail\n"
            + "thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c\n");
        for (var i = 0; i < rows; i++)
        {
            text.Append(i is > 0 and < 7 ? "Sail,0.6,10," : ",,,")
                .Append(CultureInfo.InvariantCulture, $"{60 + i},{850 + (i % 97)},23.1\n");
        }

        return text.ToString();
    }

    private static string MakeRun()
    {
        double[] off = [0.01, -0.03, 0.02, 0.04, -0.02, 0, 0.03, -0.04, 0.01, -0.01, 0.02, -0.02];
        var text = new StringBuilder("# name: twelve\n# base: Ledge\n# base_g: 200\n"
            + "# thickener: Sail; chemistry=alkali-swellable; range_pct=1-5\n"
            + "# target_mpas: 9000\n# tolerance_pct: 15\nthickener,added_g,stir_s,viscosity_mpas,temp_c,ph\n");
        for (var i = 0; i < off.Length; i++)
        {
            var body = 800 * Math.Exp((3.6 / (1 + Math.Exp(-(i - 5.5) / 1.4))) + off[i]);
            text.Append(i == 0 ? ",,," : "Sail,0.9,20,").Append(CultureInfo.InvariantCulture, $"{body:0},23,8.9\n");
        }

        return text.ToString();
    }
}
