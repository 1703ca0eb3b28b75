using CsCheck;
using Viscolog.Core.Inference;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

/// <summary>What holds of the linear part of the two-thickener posterior for any readings.</summary>
public sealed class WalkStateLaws
{
    private static readonly Gen<double> Unit = Gen.Double[0, 1];

    [Fact]
    public void A_reading_never_makes_less_sure_and_moves_towards_itself()
        => Gen.Select(Unit, Unit, Gen.Double[-1, 1], Gen.Double[0.0004, 0.2]).Sample((h1, h2, value, noise) =>
        {
            var state = Start();
            var before = state.At(h1, h2);
            Assert.True(state.Update(h1, h2, value, noise) > 0);
            var after = state.At(h1, h2);
            Assert.True(after.Variance <= before.Variance + 1e-12);
            Assert.True(Math.Abs(after.Mean - value) <= Math.Abs(before.Mean - value) + 1e-12);
        });

    [Fact]
    public void What_comes_later_makes_an_earlier_state_no_less_sure_and_tells_the_same_of_the_coefficients()
        => Gen.Select(Unit, Unit, Gen.Double[-1, 1], Gen.Double[0.001, 0.5]).Sample((h1, h2, value, walked) =>
        {
            var earlier = Start();
            earlier.Update(0.3, 0.1, 0.2, 0.01);
            var later = earlier;
            later.Walk(walked);
            later.Update(h1, h2, value, 0.01);
            var smoothed = earlier.Smoothed(later, walked);
            Assert.Equal(later.First, smoothed.First);
            Assert.Equal(later.SecondSd, smoothed.SecondSd);
            foreach (var (a, b) in new[] { (0.0, 0.0), (0.5, 0.2), (1.0, 1.0) })
            {
                Assert.InRange(smoothed.At(a, b).Variance, 0, earlier.At(a, b).Variance + 1e-9);
            }
        });

    [Fact]
    public void Without_a_walk_in_between_the_two_states_are_one()
    {
        var earlier = Start();
        var later = earlier;
        later.Update(0.4, 0.4, 0.5, 0.01);
        Assert.Equal(later.At(0.7, 0.2), earlier.Smoothed(later, 0).At(0.7, 0.2));
        var nearly = earlier.Smoothed(later, 1e-9);
        Assert.Equal(later.At(0.7, 0.2).Mean, nearly.At(0.7, 0.2).Mean, 1e-6);
        Assert.Equal(later.At(0.7, 0.2).Variance, nearly.At(0.7, 0.2).Variance, 1e-6);
    }

    private static WalkState Start() => new((0, 1), (0.5, 0.4), (0.2, 0.3));
}
