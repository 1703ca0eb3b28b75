namespace Viscolog.Tui;

/// <summary>How a piece of text stands out. Colour never carries meaning alone; the words do.</summary>
internal enum Tone
{
    Plain,
    Dim,
    Strong,
    Good,
    Caution,
    Bad,
    Chosen,
}
