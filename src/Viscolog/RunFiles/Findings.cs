using System.Collections.Immutable;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>What was found while one file is read: the first refusal, and every warning.</summary>
internal sealed class Findings(string file)
{
    private readonly ImmutableArray<string>.Builder _warnings = ImmutableArray.CreateBuilder<string>();

    /// <summary>The first refusal; null while all is well.</summary>
    public Refusal? Refusal { get; private set; }

    /// <summary>Whether nothing was refused.</summary>
    public bool Well => Refusal is null;

    /// <summary>The warnings in order.</summary>
    public ImmutableArray<string> Warnings => _warnings.ToImmutable();

    /// <summary>Refuses the file; what was refused before stands.</summary>
    public void Refuse(Place at, string expected)
        => Refusal ??= new(file, at.Line, at.Column is null ? null : OneLine.Of(at.Column), at.Read, expected);

    /// <summary>Warns of something on a line.</summary>
    public void Warn(int line, string text) => _warnings.Add(OneLine.Of(FormattableString.Invariant($"{file}, line {line}: {text}")));
}

/// <summary>Where a text stands in a file, and how a refusal shows it.</summary>
internal readonly record struct Place(int? Line, string? Column, string Read);
