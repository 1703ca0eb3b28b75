namespace Viscolog.Core.Practice;

/// <summary>A hidden dose–response law: ln of the body in mPa·s over z, dose divided by the top of the usual range.</summary>
/// <param name="Family">The family's name, shown when the pot is revealed.</param>
/// <param name="LnBody">The law; z from 0 on.</param>
public sealed record HiddenLaw(string Family, Func<double, double> LnBody)
{
    /// <summary>The dose over the range top up to which more thickener gives more body; 1 for laws that rise throughout.</summary>
    public double Useful { get; init; } = 1;

    /// <summary>The same law in another lot of base and thickener.</summary>
    /// <param name="lnLevel">Added to ln of the base's body.</param>
    /// <param name="potency">Factor on the thickener's strength, above 0.</param>
    public HiddenLaw InLot(double lnLevel, double potency) => this with { LnBody = z => LnBody(z * potency) + lnLevel, Useful = Useful / potency };
}
