using System.Collections.Immutable;

namespace Viscolog.Tui;

/// <summary>A few fields, and what they make together.</summary>
/// <param name="Title">Its title.</param>
/// <param name="About">A line or more above the fields; may be empty.</param>
/// <param name="Fields">The fields, from above.</param>
/// <param name="Read">Makes the value of the texts, or says what is wrong.</param>
internal sealed record Form<T>(string Title, string About, ImmutableArray<FormField> Fields, Func<IReadOnlyList<string>, FormAnswer<T>> Read)
    where T : class;
