using System.Runtime.InteropServices;

namespace Viscolog.Core.Advising;

/// <summary>Chances of body and string at one pair of doses, as fractions.</summary>
/// <param name="BodyIn">The body is in band.</param>
/// <param name="BodyOver">The body is over.</param>
/// <param name="StringIn">The string is in band.</param>
/// <param name="StringOver">The string is over.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PairChances(double BodyIn, double BodyOver, double StringIn, double StringOver)
{
    /// <summary>Both are in band; given the readings the two are independent.</summary>
    public double Both => BodyIn * StringIn;
}
