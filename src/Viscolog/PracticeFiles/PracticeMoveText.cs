using System.Globalization;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.PracticeFiles;

/// <summary>Moves as they are typed and kept: dose=1.5, base=20, stir=10, wait=60, read, end.</summary>
internal static class PracticeMoveText
{
    private const NumberStyles Styles = NumberStyles.AllowDecimalPoint;

    /// <summary>A move in text.</summary>
    public static string Of(PracticeMove move) => move switch
    {
        PracticeMove.Dose dose => "dose=" + Number(dose.Poured.Grams),
        PracticeMove.LetDown letDown => "base=" + Number(letDown.Base.Grams),
        PracticeMove.Stir stir => "stir=" + Number(stir.Time.TotalSeconds),
        PracticeMove.Wait wait => "wait=" + Number(wait.Time.TotalSeconds),
        PracticeMove.Read => "read",
        PracticeMove.End => "end",
        _ => throw new ArgumentOutOfRangeException(nameof(move), move, "not a case of the closed set"),
    };

    /// <summary>The move that a text says; null with the reason.</summary>
    public static PracticeMove? Read(string text, out string? error)
    {
        error = null;
        var parts = text.Split('=', 2);
        if (text is "read" or "end")
        {
            return text == "read" ? new PracticeMove.Read() : new PracticeMove.End();
        }

        if (parts.Length == 2 && double.TryParse(parts[1], Styles, CultureInfo.InvariantCulture, out var number) && number is > 0 and < 1e6)
        {
            switch (parts[0])
            {
                case "dose":
                    return new PracticeMove.Dose(Mass.FromGrams(number));
                case "base":
                    return new PracticeMove.LetDown(Mass.FromGrams(number));
                case "stir":
                    return new PracticeMove.Stir(TimeSpan.FromSeconds(number));
                case "wait":
                    return new PracticeMove.Wait(TimeSpan.FromSeconds(number));
            }
        }

        error = $"read '{TerminalText.Of(text)}', expected dose=GRAMS, base=GRAMS, stir=SECONDS, wait=SECONDS, read or end, "
            + "numbers above 0 with a decimal point";
        return null;
    }

    private static string Number(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);
}
