using System.Globalization;
using System.Text.RegularExpressions;

namespace Viscolog.Tests.Support;

/// <summary>
/// Compares a picture with the file that the documentation shows; with VISCOLOG_ACCEPT=1 in the environment the file is drawn anew.
/// </summary>
internal static partial class StoredPicture
{
    /// <summary>Checks a picture.</summary>
    /// <param name="path">From the project's folder.</param>
    /// <param name="drawn">The picture as it is drawn now.</param>
    /// <param name="within">By how much numbers may differ.</param>
    public static void Check(string path, string drawn, double within = 0)
    {
        var file = Checkout.At(path);
        if (Environment.GetEnvironmentVariable("VISCOLOG_ACCEPT") == "1" && !(File.Exists(file) && Same(File.ReadAllText(file), drawn, 0)))
        {
            File.WriteAllText(file, drawn);
        }

        Assert.True(File.Exists(file), $"no picture {path}");
        Assert.True(Same(File.ReadAllText(file), drawn, within), $"{path} is not what is drawn now; VISCOLOG_ACCEPT=1 draws it anew");
    }

    private static bool Same(string stored, string drawn, double within)
    {
        var (one, other) = (stored.ReplaceLineEndings("\n"), drawn.ReplaceLineEndings("\n"));
        return string.Equals(one, other, StringComparison.Ordinal)
            || (within > 0 && string.Equals(Number().Replace(one, "0"), Number().Replace(other, "0"), StringComparison.Ordinal)
                && Numbers(one).Zip(Numbers(other)).All(p => Math.Abs(p.First - p.Second) <= within));
    }

    private static IEnumerable<double> Numbers(string text)
        => Number().Matches(text).Select(m => double.Parse(m.Value, NumberStyles.Float, CultureInfo.InvariantCulture));

    [GeneratedRegex(@"-?\d+(\.\d+)?(E[-+]?\d+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}
