using Viscolog.Core.Checking;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>What few readings tell, against published numbers.</summary>
public sealed class FewReadingsTests
{
    /// <summary>NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.2: critical values of Student's t, here of 0.975.</summary>
    [Theory]
    [InlineData(1, 12.706205)]
    [InlineData(2, 4.3026527)]
    [InlineData(3, 3.1824463)]
    [InlineData(4, 2.7764451)]
    [InlineData(5, 2.5705818)]
    public void Critical_values_of_Student(int freedom, double critical)
    {
        Assert.Equal(critical, Conformity.Coverage(Percentage.FromPercent(95), freedom), 1e-6);
        Assert.Equal(0.95, Conformity.Chance(0, 1, -critical, critical, freedom), 1e-7);
        Assert.Equal(0.975, Conformity.Chance(0, 1, -1e12, critical, freedom), 1e-7);
    }

    /// <summary>
    /// JCGM 100:2008, example H.1 (calibration of an end gauge): parts of 25, 5.8, 3.9, 6.7, 2.9 and 16.6 nm with 18, 24, 5, 8, 50 and 2
    /// degrees of freedom give 16.7 effective ones, and t of 99 % with 16 is 2.92.
    /// </summary>
    [Fact]
    public void Effective_degrees_of_freedom_of_an_end_gauge()
    {
        var freedom = Conformity.EffectiveFreedom([(25, 18), (5.8, 24), (3.9, 5), (6.7, 8), (2.9, 50), (16.6, 2)]);
        Assert.Equal(16.7, freedom, 0.1);
        Assert.Equal(2.92, Conformity.Coverage(Percentage.FromPercent(99), Math.Floor(freedom)), 0.005);
    }

    /// <summary>JCGM 100:2008, example in G.4.1 (from memory): 0.25, 0.57 and 0.82 % from 10, 5 and 15 readings give 19.0.</summary>
    [Fact]
    public void Effective_degrees_of_freedom_of_a_product()
        => Assert.Equal(19.0, Conformity.EffectiveFreedom([(0.25, 9), (0.57, 4), (0.82, 14)]), 0.2);

    [Fact]
    public void Parts_that_are_known_leave_the_normal_law()
    {
        Assert.Equal(double.PositiveInfinity, Conformity.EffectiveFreedom([(1, double.PositiveInfinity), (2, double.PositiveInfinity)]));
        Assert.Equal(1.959964, Conformity.Coverage(Percentage.FromPercent(95), double.PositiveInfinity), 1e-6);
    }
}
