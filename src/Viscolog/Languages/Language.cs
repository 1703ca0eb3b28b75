namespace Viscolog.Languages;

/// <summary>A language that screens, advice and papers can speak.</summary>
internal enum Language
{
    English,
    German,
}
