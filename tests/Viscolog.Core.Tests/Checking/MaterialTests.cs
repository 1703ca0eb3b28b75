using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Checking;

public sealed class MaterialTests
{
    public static TheoryData<Material, string> Named => new()
    {
        { new Material.OfBase(new("Gable")), "Gable" },
        { new Material.OfThickener(new("TA")), "TA" },
        { new Material.OfMethod(new("hall cup", Method.Direct, null)), "hall cup" },
        { new Material.OfSpecification(new("wall gel")), "wall gel" },
    };

    [Theory]
    [MemberData(nameof(Named))]
    public void A_material_is_named_after_what_it_holds(Material material, string name) => Assert.Equal(name, material.Name);

    [Theory]
    [MemberData(nameof(Named))]
    public void Retiring_changes_nothing_else(Material material, string name)
    {
        var retired = material with { IsRetired = true, Note = "no longer made" };
        Assert.Equal((name, true, "no longer made"), (retired.Name, retired.IsRetired, retired.Note));
        Assert.Equal(material, retired with { IsRetired = false, Note = null });
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" ")]
    public void Nothing_is_kept_without_a_name(string? name)
    {
        Assert.Throws<ArgumentException>("Base.Name", () => new Material.OfBase(new(name)));
        Assert.Throws<ArgumentException>("Thickener.Name", () => new Material.OfThickener(new(name!)));
        Assert.Throws<ArgumentException>("Name", () => new MethodInUse(name!, Method.Direct, null));
        Assert.Throws<ArgumentException>("Name", () => new MethodInUse("cup", Method.Direct, null) with { Name = name! });
        Assert.Throws<ArgumentException>("Name", () => new Specification(name!));
        Assert.Throws<ArgumentException>("Name", () => new Specification("gel") with { Name = name! });
    }

    [Fact]
    public void A_method_in_use_falls_back_on_the_methods_repeatability()
    {
        Assert.Equal(Method.Direct.Repeatability, new MethodInUse("bench viscometer", Method.Direct, null).RepeatabilityInForce);
        Assert.Equal(2.5, new MethodInUse("bench viscometer", Method.Direct, Percentage.FromPercent(2.5)).RepeatabilityInForce.Percent);
    }
}
