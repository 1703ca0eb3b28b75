using Viscolog.Benchmarks.Pots;
using Viscolog.Core.Advising;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>The main job played on laws that others published: one that is a shape of this program, and one that is not.</summary>
public sealed class PublishedLawTests
{
    /// <summary>
    /// Krieger and Dougherty, Transactions of the Society of Rheology 3 (1959) 137–152: relative viscosity of a suspension,
    /// (1 − φ/φm)^(−[η]·φm), with [η] 2.5 and φm 0.64; figures computed from that form.
    /// </summary>
    private static readonly (double Fraction, double Relative)[] Suspension =
    [
        (0.05, 1.139), (0.1, 1.31237), (0.2, 1.82123), (0.3, 2.7512), (0.4, 4.80341), (0.5, 11.3784), (0.55, 23.0728), (0.6, 84.4485),
    ];

    [Fact]
    public void The_law_is_the_published_one()
        => Assert.All(Suspension, row => Assert.Equal(row.Relative, Relative(row.Fraction), row.Relative * 1e-4));

    /// <summary>
    /// Twenty pots a law: nearly all must end in band, and at most one over; processors may differ in the last digit, and so in a pot.
    /// </summary>
    [Theory]
    [InlineData("Krieger-Dougherty")]
    [InlineData("Mooney")]
    public void Advice_brings_a_thickening_suspension_into_its_band_and_not_beyond(string law)
    {
        Func<double, double> relative = law == "Mooney" ? Mooney : Relative;
        double[] ends =
        [
            .. from target in new[] { 2.75, 4.8, 11.4, 23.0 } from seed in Enumerable.Range(1, 5) select Played(relative, target, seed),
        ];
        Assert.True(ends.Count(e => e > 1.15) <= 1, string.Join(' ', ends));
        Assert.True(ends.Count(e => e is >= 0.85 and <= 1.15) >= 18, string.Join(' ', ends));
    }

    /// <summary>The true body over the aim when the advice ends.</summary>
    private static double Played(Func<double, double> law, double target, int seed)
    {
        var solid = new Thickener("solid") { UsualRange = new(Dose.FromPercent(1), Dose.FromPercent(6)) };
        var run = new Run(new("liquid"), Mass.FromGrams(200))
        {
            Thickeners = [solid],
            Target = new Target.Value(Viscosity.FromMilliPascalSeconds(500 * target), null),
        };

        // A tenth of the volume fraction stands for the dose, so that 6 % is 0.6 by volume.
        var pot = new PracticePot(new("suspension", z => Math.Log(500 * law(Math.Min(0.63, 0.6 * z)))), new(0.04, 0.02, 0), run, seed);
        pot.Read(TimeSpan.Zero);
        for (var move = 0; move < 40; move++)
        {
            var action = Studied.Of(new(pot.Run)).Advice!.Action;
            if (action is not (BenchAction.Add or BenchAction.Measure))
            {
                break;
            }

            if (action is BenchAction.Add add)
            {
                pot.Add(add.Poured);
            }

            pot.Read(TimeSpan.Zero);
        }

        return pot.TrueBody.MilliPascalSeconds / (500 * target);
    }

    /// <summary>
    /// Viscosity of water, Kestin, Sokolov and Wakeham, Journal of Physical and Chemical Reference Data 7 (1978) 941–948: 1.002, 0.8902 and
    /// 0.7975 mPa·s at 20, 25 and 30 °C (the figures from memory).
    /// </summary>
    [Theory]
    [InlineData(25, 0.8902)]
    [InlineData(30, 0.7975)]
    public void The_default_temperature_correction_holds_for_water_within_its_stated_uncertainty(double celsius, double body)
    {
        var (shift, sd) = TemperatureCorrection.LnShift(Temperature.FromCelsius(celsius), Temperature.FromCelsius(20));
        Assert.InRange(Math.Log(1.002) - Math.Log(body), shift - sd, shift + sd);
        Assert.Equal(1.002, body * Math.Exp(shift), 0.02);
    }

    /// <summary>
    /// Mooney, Journal of Colloid Science 6 (1951) 162–170: relative viscosity exp(2.5·φ/(1 − k·φ)), here with k 1.35 (the value from
    /// memory; the source gives a range from it upwards).
    /// </summary>
    private static double Mooney(double fraction) => Math.Exp(2.5 * fraction / (1 - (1.35 * fraction)));

    private static double Relative(double fraction) => Math.Pow(1 - (fraction / 0.64), -2.5 * 0.64);
}
