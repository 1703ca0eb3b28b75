using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace Viscolog.Languages;

/// <summary>
/// A text with holes as the compiler takes it apart: its composite format, by which it is looked up, and what goes into the holes.
/// </summary>
[InterpolatedStringHandler]
internal readonly ref struct SaidText
{
    private readonly StringBuilder _template;
    private readonly List<object?> _values;

    public SaidText(int literalLength, int formattedCount)
    {
        _template = new(literalLength + (4 * formattedCount));
        _values = new(formattedCount);
    }

    public string Template => _template.ToString();

    public object?[] Values => [.. _values];

    public void AppendLiteral(string text)
        => _template.Append(text.AsSpan().ContainsAny('{', '}')
            ? text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal) : text);

    public void AppendFormatted<T>(T value) => Hole(value, "");

    public void AppendFormatted<T>(T value, string? format) => Hole(value, ":" + format);

    public void AppendFormatted<T>(T value, int alignment) => Hole(value, string.Create(CultureInfo.InvariantCulture, $",{alignment}"));

    public void AppendFormatted<T>(T value, int alignment, string? format)
        => Hole(value, string.Create(CultureInfo.InvariantCulture, $",{alignment}:{format}"));

    private void Hole(object? value, string how)
    {
        _template.Append(CultureInfo.InvariantCulture, $"{{{_values.Count}{how}}}");
        _values.Add(value);
    }
}
