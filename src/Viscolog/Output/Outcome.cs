using System.Diagnostics.CodeAnalysis;

namespace Viscolog.Output;

/// <summary>What was asked for, or one line that says why it is not there and what to do.</summary>
internal sealed class Outcome<T>
    where T : class
{
    private Outcome(T? made, string? reason) => (Made, Reason) = (made, reason);

    /// <summary>What was asked for; null where it was refused.</summary>
    public T? Made { get; }

    /// <summary>Why it is not there; null where it is.</summary>
    public string? Reason { get; }

    public static implicit operator Outcome<T>(T made) => new(made, null);

    public static implicit operator Outcome<T>(Refused refused) => new(null, refused.Reason);

    /// <summary>Whether it is there; either it or the reason is given out.</summary>
    public bool Is([NotNullWhen(true)] out T? made, [NotNullWhen(false)] out string? reason)
    {
        (made, reason) = (Made, Reason);
        return made is not null;
    }

    public TResult Match<TResult>(Func<T, TResult> made, Func<string, TResult> refused)
        => Is(out var it, out var reason) ? made(it) : refused(reason);
}

/// <summary>The reason of an outcome that is none.</summary>
internal readonly record struct Refused(string Reason);
