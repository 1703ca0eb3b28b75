namespace Viscolog.Core.Practice;

/// <summary>A hidden law of body and string over two doses, each over the top of its thickener's usual range.</summary>
/// <param name="Family">The families' names, shown when the pot is revealed.</param>
/// <param name="LnBody">ln of the body in mPa·s, from the body thickener's dose and the string thickener's.</param>
/// <param name="LnString">ln of the string in mm, likewise.</param>
public sealed record PairLaw(string Family, Func<double, double, double> LnBody, Func<double, double, double> LnString)
{
    /// <summary>The body thickener's dose over its range top up to which more gives more body.</summary>
    public double Useful { get; init; } = 1;
}
