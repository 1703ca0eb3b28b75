using System.Collections.Immutable;

namespace Viscolog.RunFiles;

/// <summary>One row on its own.</summary>
/// <param name="Content">What it says.</param>
/// <param name="Unknown">The texts of the unknown columns, in their order; fewer where the last ones are empty.</param>
internal sealed record FileRow(RowContent Content, ImmutableArray<string> Unknown)
{
    /// <summary>Every text in it.</summary>
    public IEnumerable<string> Texts() => new[] { Content.Note, Content.Void, Content.Dosed?.Thickener }.OfType<string>().Concat(Unknown);

    /// <summary>Whether both say the same.</summary>
    public bool Equals(FileRow? other)
        => other is not null && Content == other.Content && Filled(Unknown).SequenceEqual(Filled(other.Unknown), StringComparer.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => Content.GetHashCode();

    private static IEnumerable<string> Filled(ImmutableArray<string> unknown)
    {
        var count = unknown.Length;
        while (count > 0 && unknown[count - 1].Length == 0)
        {
            count--;
        }

        return unknown.Take(count);
    }
}
