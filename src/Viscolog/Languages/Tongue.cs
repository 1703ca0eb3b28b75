using System.Globalization;

namespace Viscolog.Languages;

/// <summary>
/// The language in which screens, advice and papers speak. Texts stand in the code in English, where they are said; a text in another
/// language is looked up by the English one, with its holes numbered as in a composite format, and where it is missing the English text
/// stands. Files, commands and JSON are the same in all languages.
/// </summary>
internal static class Tongue
{
    private static readonly AsyncLocal<Language> Chosen = new();

    private static readonly Lazy<Translations> German = new(() => Translations.Of("German"));

    private static readonly CultureInfo WithPoint = Culture(".", "");

    private static readonly CultureInfo WithComma = Culture(",", "");

    private static readonly CultureInfo SpacedWithPoint = Culture(".", "\u2009");

    private static readonly CultureInfo SpacedWithComma = Culture(",", "\u2009");

    /// <summary>The language now.</summary>
    public static Language Spoken => Chosen.Value;

    /// <summary>How numbers are written for people, without marks between thousands. Files and JSON have the invariant culture.</summary>
    public static CultureInfo Numbers => Chosen.Value == Language.German ? WithComma : WithPoint;

    /// <summary>The same with thousands set apart by a thin space.</summary>
    public static CultureInfo Spaced => Chosen.Value == Language.German ? SpacedWithComma : SpacedWithPoint;

    /// <summary>From here on, and in whatever is begun from here, this language is spoken.</summary>
    public static void Speak(Language language) => Chosen.Value = language;

    /// <summary>Does something in a language, whatever is spoken around it.</summary>
    public static T In<T>(Language language, Func<T> what)
    {
        var before = Chosen.Value;
        Chosen.Value = language;
        try
        {
            return what();
        }
        finally
        {
            Chosen.Value = before;
        }
    }

    /// <summary>Says a text.</summary>
    /// <param name="text">In English.</param>
    /// <param name="sense">Tells texts apart that are the same in English alone; null for none.</param>
    public static string Say(string text, string? sense = null) => Translated(text, sense) ?? text;

    /// <summary>Says a text with holes.</summary>
    /// <param name="text">In English.</param>
    /// <param name="sense">As above.</param>
    public static string Say(SaidText text, string? sense = null)
        => string.Format(Numbers, Translated(text.Template, sense) ?? text.Template, text.Values);

    /// <summary>Says a name that comes from Core.</summary>
    /// <param name="name">In English.</param>
    public static string Named(string name) => Translated(name, null) ?? name;

    private static string? Translated(string text, string? sense) => Chosen.Value switch
    {
        Language.German => German.Value.Of(text, sense),
        _ => null,
    };

    private static CultureInfo Culture(string decimals, string thousands)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = decimals;
        culture.NumberFormat.NumberGroupSeparator = thousands;
        return CultureInfo.ReadOnly(culture);
    }
}
