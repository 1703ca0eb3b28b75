using System.Collections;
using System.Collections.Frozen;
using System.Resources;

namespace Viscolog.Languages;

/// <summary>The texts of a language, from the resources of the program: English text to translation.</summary>
internal sealed class Translations
{
    /// <summary>Between a text and its sense in the name of a resource.</summary>
    public const char BeforeSense = '¦';

    private readonly FrozenDictionary<string, string> _texts;

    private Translations(FrozenDictionary<string, string> texts) => _texts = texts;

    /// <summary>All texts by name, as the resources have them.</summary>
    public IReadOnlyDictionary<string, string> Texts => _texts;

    /// <summary>
    /// Reads the resources of a language: one file for each room that speaks. A text in several of them is the same in all.
    /// </summary>
    /// <param name="language">The folder with its resources.</param>
    public static Translations Of(string language)
    {
        var assembly = typeof(Translations).Assembly;
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        var folder = $"{typeof(Translations).Namespace}.{language}.";
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(folder, StringComparison.Ordinal)))
        {
            using var reader = new ResourceReader(assembly.GetManifestResourceStream(name)!);
            foreach (DictionaryEntry text in reader)
            {
                texts[(string)text.Key] = (string)text.Value!;
            }
        }

        return new(texts.ToFrozenDictionary(StringComparer.Ordinal));
    }

    /// <summary>The translation; null where there is none.</summary>
    public string? Of(string text, string? sense) => _texts.GetValueOrDefault(sense is null ? text : $"{text}{BeforeSense}{sense}");
}
