namespace Viscolog.Tui.Pattern;

/// <summary>Where a longer text is shown from, counted from its beginning or, once its end was called for, from there.</summary>
/// <param name="Lines">Lines that are passed over.</param>
/// <param name="FromEnd">Whether they are those behind what is shown.</param>
internal readonly record struct Scrolling(int Lines, bool FromEnd)
{
    /// <summary>What moves a text or a list to its end; the negative of it to its beginning.</summary>
    public const int ToEnd = int.MaxValue;

    /// <summary>Moves by so many lines down.</summary>
    public Scrolling By(int lines) => lines switch
    {
        ToEnd => new(0, true),
        -ToEnd => default,
        _ => this with { Lines = Math.Max(0, FromEnd ? Lines - lines : Lines + lines) },
    };

    /// <summary>The first line shown of so many in so many rows.</summary>
    public int First(int count, int rows)
    {
        var last = Math.Max(0, count - rows);
        return FromEnd ? Math.Max(0, last - Lines) : Math.Min(Lines, last);
    }

    /// <summary>Another place in a list, by so many down.</summary>
    public static int Moved(int place, int by, int count) => (int)Math.Clamp((long)place + by, 0, Math.Max(0, count - 1));
}
