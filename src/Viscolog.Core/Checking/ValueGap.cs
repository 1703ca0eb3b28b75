namespace Viscolog.Core.Checking;

/// <summary>Why a batch tells no value. The set of cases is closed.</summary>
public abstract record ValueGap
{
    private protected ValueGap()
    {
    }

    /// <summary>It can't be checked.</summary>
    /// <param name="Refusal">Why not.</param>
    public sealed record NotChecked(CheckRefusal Refusal) : ValueGap;

    /// <summary>No reading of its last step has settled.</summary>
    public sealed record NothingSettled : ValueGap;

    /// <summary>Its last step was not read.</summary>
    public sealed record NotRead : ValueGap;

    /// <summary>A value needs more readings.</summary>
    /// <param name="There">So many count.</param>
    /// <param name="Needed">So many are needed.</param>
    public sealed record TooFewReadings(int There, int Needed) : ValueGap;
}
