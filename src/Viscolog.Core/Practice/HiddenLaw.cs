namespace Viscolog.Core.Practice;

/// <summary>A hidden dose–response law: ln of the body in mPa·s over z, dose divided by the top of the usual range.</summary>
/// <param name="Family">The family's name, shown when the pot is revealed.</param>
/// <param name="LnBody">The law; z from 0 on.</param>
public sealed record HiddenLaw(string Family, Func<double, double> LnBody);
