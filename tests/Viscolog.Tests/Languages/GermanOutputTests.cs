using System.Text.RegularExpressions;
using Viscolog.Cli;
using Viscolog.Cli.Calls;
using Viscolog.Languages;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;
using Viscolog.Text;

namespace Viscolog.Tests.Languages;

/// <summary>What commands answer where German is spoken: German to people, the same as ever to programs.</summary>
public sealed partial class GermanOutputTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    /// <summary>Calls that answer people, on samples.</summary>
    public static TheoryData<string> Calls =>
    [
        "advise sample-runs/lantern-gel-07.csv",
        "advise sample-runs/lantern-gel-07.csv --history sample-runs/lantern-gel-06.csv --what-if 1",
        "advise sample-runs/harbour-gel-02-over.csv",
        "advise sample-runs/dusk-glaze-05-flattening.csv",
        "advise sample-runs/pair/thread-gel-02.csv",
        "advise sample-runs/methods/shade-wash-cup.csv",
        "advise sample-runs/methods/flat-paint-krebs.csv",
        "fit sample-runs/lantern-gel-07.csv",
        "fit sample-runs/pair/thread-gel-02.csv",
        "report sample-runs/lantern-gel-07.csv",
        "report sample-runs/pair/thread-gel-02.csv",
        "check sample-runs/checks/lantern-gel-21.csv --low 7650 --high 10350",
        "check sample-runs/checks/harbour-gel-09-over.csv --target 9000",
        "check sample-runs/checks/lantern-gel-22-short.csv --target 9000",
        "check sample-runs/checks/lantern-gel-23-low-ph.csv --target 9000",
        "trend sample-runs/trend/lantern-gel-batches.csv --baseline 20",
        "batch sample-runs/lantern-gel-06.csv --to 5kg",
        "flow sample-runs/flow/lantern-gel-sweep.csv",
        "flow sample-runs/flow/harbour-gel-speeds.csv",
        "flow sample-runs/flow/dusk-glaze-loop.csv",
        "convert --method krebs 95",
        "practice demo --pot slow --seed 3",
        "practice replay sample-runs/harbour-gel-02-over.csv",
    ];

    public void Dispose() => _folder.Dispose();

    /// <summary>No word that only English texts have is left in the answer, and the answer is not the English one.</summary>
    [Theory]
    [MemberData(nameof(Calls))]
    public void An_answer_has_no_english_words(string call)
    {
        string[] args = [.. call.Split(' ').Select(a => a.StartsWith("sample-runs/", StringComparison.Ordinal) ? Checkout.At(a) : a)];
        var (english, german) = (Run("C", args), Run("de_DE.UTF-8", args));
        Assert.Equal((english.Code, true), (german.Code, german.Output.Length > 100));
        Assert.NotEqual(english.Output, german.Output, StringComparer.Ordinal);
        var given = string.Join(' ', args.Where(File.Exists).Select(File.ReadAllText)) + call;
        Assert.Empty(GermanWords.Foreign(german.Output, given));
    }

    [Fact]
    public void Pages_have_no_english_words()
        => Assert.All(
            Directory.GetFiles(Checkout.At("tests/Viscolog.Tests/Expected/tui/de"), "*.txt"),
            p => Assert.Empty(GermanWords.Foreign(CutPattern().Replace(File.ReadAllText(p), ""), Samples + Names)));

    [Theory]
    [InlineData("advise", "sample-runs/lantern-gel-07.csv", "--json")]
    [InlineData("check", "sample-runs/checks/lantern-gel-21.csv", "--target", "9000", "--json")]
    public void Programs_are_answered_the_same_in_all_languages(params string[] call)
    {
        string[] args = [.. call.Select(a => a.StartsWith("sample-runs/", StringComparison.Ordinal) ? Checkout.At(a) : a)];
        Assert.Equal(Run("C", args), Run("de", args));
    }

    [Theory]
    [InlineData("de_AT.UTF-8", null, "ZUGEBEN")]
    [InlineData("de", "en", "ADD")]
    [InlineData("en_GB.UTF-8", "de", "ZUGEBEN")]
    [InlineData("den_XX", null, "ADD")]
    [InlineData(null, null, "ADD")]
    public void The_setting_goes_before_the_locale(string? locale, string? setting, string said)
    {
        File.WriteAllText(_folder.Of("config.txt"), setting is null ? "" : $"language: {setting}\n");
        Assert.Contains(said, Run(locale, "advise", Checkout.Sample("lantern-gel-07.csv")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_the_locale_s_variables_the_first_that_says_something_counts()
    {
        Language Of(params (string, string)[] set)
            => Settings.OfLocale(n => set.Where(s => s.Item1 == n).Select(s => s.Item2).FirstOrDefault());
        Assert.Equal(Language.German, Of(("LC_ALL", "de_DE"), ("LANG", "en_US")));
        Assert.Equal(Language.English, Of(("LC_ALL", "C"), ("LANG", "de_DE")));
        Assert.Equal(Language.German, Of(("LC_ALL", ""), ("LC_MESSAGES", "de"), ("LANG", "C")));
        Assert.Equal(Language.English, Of());
    }

    [Fact]
    public void Numbers_have_a_comma_where_german_is_spoken_and_thousands_a_thin_space_in_both()
        => Assert.Equal(
            ("1\u2009234.50", "1\u2009234,50"),
            (1234.5.ToString("N2", Tongue.Spaced), Tongue.In(Language.German, () => 1234.5.ToString("N2", Tongue.Spaced))));

    /// <summary>Names on the stored pages: of practice pots, as they are typed, of players and of keys.</summary>
    private const string Names = " slow steep hard Player B with a name that is far too long for any column of a sheet Left ";

    private static string Samples { get; } = string.Join(
        ' ', Directory.GetFiles(Checkout.At("sample-runs"), "*.csv", SearchOption.AllDirectories).Select(File.ReadAllText));

    private (int Code, string Output) Run(string? locale, params string[] args)
    {
        using var output = new StringWriter();
        using var outputWriter = new TerminalWriter(output);
        using var errorWriter = new TerminalWriter(TextWriter.Null);
        var code = CommandLine.Run(
            args,
            new(outputWriter, errorWriter, new(80) { Unicode = true }),
            new(
                name => name == "LANG" ? locale
                    : name == Settings.Variable ? _folder.Of("config.txt") : name == LogPlace.Variable ? _folder.Of("log") : null,
                TimeProvider.System));
        return (code, output.ToString());
    }

    [GeneratedRegex(@"\p{L}+…", RegexOptions.None, 1000)]
    private static partial Regex CutPattern();

    /// <summary>Words of texts.</summary>
    private static partial class GermanWords
    {
        private static readonly IReadOnlyDictionary<string, string> Texts = Translations.Of("German").Texts;

        private static readonly HashSet<string> English = Of(string.Join(' ', Texts.Keys));

        private static readonly HashSet<string> German = Of(string.Join(' ', Texts.Values));

        /// <summary>Words that English texts have and neither a German one nor what was given.</summary>
        public static IEnumerable<string> Foreign(string text, string given)
            => Of(text).Where(w => English.Contains(w) && !German.Contains(w)).Except(Of(given), StringComparer.OrdinalIgnoreCase);

        private static HashSet<string> Of(string text)
            => [.. Words().Matches(text).Select(m => m.Value.ToUpperInvariant())];

        [GeneratedRegex(@"\p{L}{4,}", RegexOptions.None, 1000)]
        private static partial Regex Words();
    }
}
