using CsCheck;
using Viscolog.Core.Curves;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

public sealed class ShapeLaws
{
    public static TheoryData<string> Names => [.. Shapes.All.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_shape_starts_at_nothing_and_stays_finite(string name)
    {
        var shape = Shapes.All.Single(s => s.Name == name);
        var draws = Gen.Double[-4, 4].Array[shape.Parameters.Length];
        Gen.Select(draws, Gen.Double[0, 3]).Sample((deviates, z) =>
        {
            double[] parameters = [.. shape.Parameters.Select((p, i) => Math.Log(p.Median) + (deviates[i] * p.LogSd))];
            Assert.True(Math.Abs(shape.Rise(parameters, 0)) < 1e-9);
            Assert.True(double.IsFinite(shape.Rise(parameters, z)));
        });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_shape_but_rise_and_fall_never_falls(string name)
    {
        if (name == "log-quadratic")
        {
            return;
        }

        var shape = Shapes.All.Single(s => s.Name == name);
        var draws = Gen.Double[-2, 2].Array[shape.Parameters.Length];
        Gen.Select(draws, Gen.Double[0, 1.5], Gen.Double[0, 0.5]).Sample((deviates, z, more) =>
        {
            double[] parameters = [.. shape.Parameters.Select((p, i) => Math.Log(p.Median) + (deviates[i] * p.LogSd))];
            Assert.True(shape.Rise(parameters, z + more) >= shape.Rise(parameters, z) - 1e-9);
        });
    }

    [Fact]
    public void Rise_and_fall_is_greatest_at_its_peak()
    {
        var shape = Shapes.All.Single(s => s.Name == "log-quadratic");
        double[] parameters = [Math.Log(3), Math.Log(0.8)];
        Assert.Equal(3, shape.Rise(parameters, 0.8), 12);
        Assert.True(shape.Rise(parameters, 0.7) < 3);
        Assert.True(shape.Rise(parameters, 0.9) < 3);
    }

    [Fact]
    public void A_sigmoid_is_half_way_at_its_half_way_dose()
        => Assert.Equal(2, Shapes.All.Single(s => s.Name == "sigmoid").Rise([Math.Log(4), Math.Log(0.5), Math.Log(3)], 0.5), 12);

    /// <summary>Another lot's potency is a factor on every dose; parameters moved along the stated direction give the same curve.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Potency_moves_the_parameters_as_stated(string name)
    {
        var shape = Shapes.All.Single(s => s.Name == name);
        double[] parameters = [.. shape.Parameters.Select(p => Math.Log(p.Median))];
        const double stronger = 0.05;
        double[] moved = [.. parameters.Select((p, i) => p + (stronger * shape.Potency[i]))];
        Assert.All([0.1, 0.3, 0.5, 0.7], z => Assert.Equal(shape.Rise(parameters, z * Math.Exp(stronger)), shape.Rise(moved, z), 0.02));
    }
}
