using Viscolog.Core.Pots;
using Viscolog.RunFiles;

namespace Viscolog.Tui.Bench;

/// <summary>Faults that a person saw, in words; the English ones are those of files.</summary>
internal static class FaultWords
{
    public static IEnumerable<string> All => Enum.GetValues<ObservedFault>().Select(Of);

    public static string Of(ObservedFault fault) => fault switch
    {
        ObservedFault.Lumps => Say("lumps"),
        ObservedFault.Weeping => Say("weeping"),
        ObservedFault.Strings => Say("strings"),
        ObservedFault.NoLevelling => Say("no-levelling"),
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "not a case of the closed set"),
    };

    /// <summary>The fault of that word, or of that name in files; null where there is none. Capitals make no difference.</summary>
    public static ObservedFault? Find(string text) => FileNames.Faults.Find(text)
        ?? Enum.GetValues<ObservedFault>().Where(f => Of(f).Equals(text.Trim(), StringComparison.OrdinalIgnoreCase))
            .Select(f => (ObservedFault?)f).FirstOrDefault();
}
