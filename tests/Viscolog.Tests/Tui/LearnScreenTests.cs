using Viscolog.Feeds;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Tui;

/// <summary>An instrument learned from its lines.</summary>
public sealed class LearnScreenTests
{
    private static readonly LearnState Begun = new("viscometer", LineSource.Read("tcp:localhost:9", out _)!);

    [Fact]
    public void Lines_are_shown_as_they_come_and_what_is_said_of_them_is_understood()
    {
        var state = Heard(Begun, "ST 8420 23.1", "ST 9000 22.8", "rubbish");
        Assert.IsType<Ask<LearnEvent>>(Assert.Single(LearnSteps.Next(state, new LearnEvent.Asked(), default).Effects));
        state = LearnSteps.Next(state, new LearnEvent.Meant(new("ST 8420 23.1", "8420 mPa·s at 23.1 °C")), default).State;
        var page = LearnScreen.Draw(state, new(100, 24, IsAscii: false)).Text;
        Assert.Contains("viscosity_mpas=2; temp_c=3 (from 1 line)", page, StringComparison.Ordinal);
        Assert.Contains("viscosity_mpas=9000  temp_c=22.8", page, StringComparison.Ordinal);
        Assert.Contains("too short", page, StringComparison.Ordinal);
        var kept = Assert.IsType<KeepInstrument>(Assert.Single(LearnSteps.Next(state, new LearnEvent.Kept(), default).Effects));
        Assert.Equal(
            ("viscometer", "viscosity_mpas=2; temp_c=3", "tcp:localhost:9"),
            (kept.Instrument.Name, kept.Instrument.Reads, kept.Instrument.Source));
    }

    [Fact]
    public void What_leaves_a_doubt_says_so_and_keeps_nothing()
    {
        var state = LearnSteps.Next(Heard(Begun, "20 20"), new LearnEvent.Meant(new("20 20", "20 °C")), default).State;
        Assert.Contains("fields 1 and 2 both fit", LearnScreen.Draw(state, new(100, 24, IsAscii: false)).Text, StringComparison.Ordinal);
        Assert.Empty(LearnSteps.Next(state, new LearnEvent.Kept(), default).Effects);
        state = LearnSteps.Next(Heard(state, "20 21"), new LearnEvent.Meant(new("20 21", "21 °C")), default).State;
        Assert.Equal("temp_c=2", state.Pattern?.Show());
    }

    [Fact]
    public void A_chosen_line_stays_chosen_while_others_come_and_old_ones_go()
    {
        var state = Heard(Begun, [.. Enumerable.Range(0, LearnState.MostLines).Select(i => FormattableString.Invariant($"{i}"))]);
        state = LearnSteps.Next(state, new LearnEvent.Moved(-1), default).State;
        var chosen = state.Lines[state.Place];
        state = Heard(state, "a", "b", "c");
        Assert.Equal(chosen, state.Lines[state.Place]);
        Assert.Equal(LearnState.MostLines, state.Lines.Length);
    }

    private static LearnState Heard(LearnState state, params string[] lines)
        => lines.Aggregate(state, (s, l) => LearnSteps.Next(s, new LearnEvent.Heard(new FeedEvent.Raw("viscometer", l)), default).State);
}
