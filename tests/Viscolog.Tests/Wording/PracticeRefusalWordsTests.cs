using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Tests.Support;
using Viscolog.Wording;

namespace Viscolog.Tests.Wording;

/// <summary>Every refused move of a practice game has its sentence, and every difficulty what it teaches.</summary>
public sealed class PracticeRefusalWordsTests
{
    /// <summary>Each case and a piece of what it says.</summary>
    public static TheoryData<PracticeRefusal, string> Cases => new()
    {
        { new PracticeRefusal.GameEnded(), "begin another" },
        { new PracticeRefusal.DoseOutside(Mass.FromGrams(200)), "weighed at first, 200 g" },
        { new PracticeRefusal.BaseOutside(Mass.FromGrams(2000)), "no more than 2000 g" },
        { new PracticeRefusal.NothingToStir(), "nothing has been added" },
        { new PracticeRefusal.StirringOutside(TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(10)), "stir from 1 s to 10 min" },
        { new PracticeRefusal.StandingOutside(TimeSpan.FromHours(2)), "no more than 2 h at a time" },
        { new PracticeRefusal.StirFirst(new PracticeMove.Wait(TimeSpan.Zero)), "thickens nothing" },
        { new PracticeRefusal.StirFirst(new PracticeMove.Read()), "would read the old body" },
        { new PracticeRefusal.StirFirst(new PracticeMove.End()), "is not stirred in yet" },
    };

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void A_refusal_says_so(PracticeRefusal refusal, string piece)
        => Assert.Contains(piece, PracticeWords.Of(refusal), StringComparison.Ordinal);

    [Fact]
    public void Every_refusal_is_tried_above() => ClosedSets.AllTried([typeof(PracticeRefusal)], Cases.Select(c => c.Data.Item1));

    [Fact]
    public void Every_difficulty_says_what_it_teaches() => Assert.Equal(
        PracticeDifficulty.All.Length, PracticeDifficulty.All.Select(PracticeWords.About).Distinct(StringComparer.Ordinal).Count());
}
