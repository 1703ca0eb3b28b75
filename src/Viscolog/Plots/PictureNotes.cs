using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>What a picture cannot show, in words.</summary>
internal static class PictureNotes
{
    public static IEnumerable<string> Of(RunPicture picture)
    {
        if (picture.Readings.IsEmpty && picture.Steps.IsEmpty)
        {
            yield return "no readings yet";
        }

        if (picture.Curve.IsEmpty)
        {
            yield return "no curve yet";
        }

        if (picture.Target is null)
        {
            yield return "no target stated";
        }

        if (picture.Readings.Count(r => r.Doubted) is var doubted and > 0)
        {
            yield return $"{doubted} doubted {(doubted == 1 ? "reading" : "readings")}";
        }
    }
}
