using System.Collections.Immutable;

namespace Viscolog.Tui.Pattern;

/// <summary>A few fields, and what they make together.</summary>
/// <param name="Title">Its title.</param>
/// <param name="About">A line or more above the fields; may be empty.</param>
/// <param name="Fields">The fields, from above.</param>
/// <param name="Read">Makes the value of the texts, or says what is wrong.</param>
internal sealed record Form<T>(
    string Title,
    string About,
    ImmutableArray<FormField> Fields,
    Func<IReadOnlyList<string>, FormAnswer<T>> Read)
    where T : class;

/// <summary>A field of a form.</summary>
/// <param name="Label">What it asks for.</param>
/// <param name="Text">What stands in it at first.</param>
/// <param name="Hint">Unit or choices, behind it.</param>
internal sealed record FormField(string Label, string Text = "", string Hint = "")
{
    /// <summary>What is usually put there, offered as a list; anything else may be typed as well.</summary>
    public ImmutableArray<string> Choices { get; init; } = [];

    /// <summary>Whether the form opens in this field, not in the one on top.</summary>
    public bool IsFirst { get; init; }
}

/// <summary>What came of reading a form: a value, or what is wrong and in which field.</summary>
internal sealed record FormAnswer<T>(T? Value, string? Error, int Field)
    where T : class
{
    public static FormAnswer<T> Of(T value) => new(value, null, 0);

    public static FormAnswer<T> Wrong(int field, string error) => new(null, error, field);
}
