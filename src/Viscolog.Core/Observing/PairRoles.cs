using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Observing;

/// <summary>Which of a run's two thickeners makes the body and which brings the string.</summary>
/// <param name="BodyThickener">The one that makes the body.</param>
/// <param name="StringThickener">The one that brings the string.</param>
public sealed record PairRoles(Thickener BodyThickener, Thickener StringThickener)
{
    /// <summary>
    /// The roles in a run: the only associative one of the two brings the string, else the one named second (a rule of this project).
    /// </summary>
    /// <returns>Null where the run does not name two thickeners.</returns>
    public static PairRoles? Of(Run run) => run.Thickeners switch
    {
        [{ Chemistry: ThickenerChemistry.Associative } first, { Chemistry: not ThickenerChemistry.Associative } second]
            => new(second, first),
        [var first, var second] => new(first, second),
        _ => null,
    };

    /// <summary>The roles in a run that is about two thickeners.</summary>
    /// <returns>Null where it is about one, or names more than two.</returns>
    public static PairRoles? In(Run run) => Apply(run) ? Of(run) : null;

    /// <summary>Whether a run is about more than one thickener: it names several and aims at a string, or several are in the pot.</summary>
    public static bool Apply(Run run) => run.Thickeners.Length > 1
        && (run.TargetString is not null || run.Thickeners.Count(t => run.PotNow().In(t.Name) > Mass.None) > 1);
}
