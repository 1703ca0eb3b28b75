using Viscolog.Core.Advising;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>Practice games in words, the same on the screen and in print.</summary>
internal static class PracticeWords
{
    /// <summary>A part of the body still to come from which on a reading counts as too early, in %.</summary>
    public const double EarlyPercent = 5;

    /// <summary>A part still to come that explains why a pot went over, in %.</summary>
    private const double TellingPercent = 15;

    /// <summary>A last gram that buys this part of the best one buys as much, for a person.</summary>
    private const double SteadyPart = 0.6;

    /// <summary>The player in one word.</summary>
    public static string Name(PracticePlayer player) => player switch
    {
        PracticePlayer.Impatient => Say("impatient", "player"),
        PracticePlayer.Bold => Say("bold", "player"),
        PracticePlayer.Advised => Say("advised", "player"),
        _ => Say("you", "player"),
    };

    /// <summary>How the player plays.</summary>
    public static string Habit(PracticePlayer player) => player switch
    {
        PracticePlayer.Impatient => Say("reads 5 s after stirring and believes it"),
        PracticePlayer.Bold => Say("pours 1 % at a time, waits 3 min, reads"),
        PracticePlayer.Advised => Say("does what the program advises"),
        _ => Say("plays by hand"),
    };

    /// <summary>What a difficulty teaches, in one sentence that gives no pot away.</summary>
    public static string About(PracticeDifficulty difficulty) => difficulty.Level switch
    {
        1 => Say("Rises steadily, settles soon."),
        2 => Say("A lot of body at first, then less and less for each gram."),
        3 => Say("Keeps building long after stirring: an early reading misleads."),
        4 => Say("Almost nothing for a while, then a great deal at once."),
        5 => Say("There is a dose beyond which the body falls again."),
        6 => Say("Any of these, or something else; nothing is known in advance."),
        _ => throw new ArgumentOutOfRangeException(nameof(difficulty), difficulty, "not a level"),
    };

    /// <summary>Why a move can't be done, and what to do.</summary>
    public static string Of(PracticeRefusal refusal) => refusal switch
    {
        PracticeRefusal.GameEnded => Say("the game has ended; begin another"),
        PracticeRefusal.DoseOutside(var most) => Say(
            $"pour more than 0 g and no more than the base weighed at first, {most.Grams:0.##} g"),
        PracticeRefusal.BaseOutside(var most) => Say(
            $"add more than 0 g of base and no more than {most.Grams:0.##} g"),
        PracticeRefusal.NothingToStir => Say("nothing has been added since the last stirring; a second one would only break the body down"),
        PracticeRefusal.StirringOutside(var least, var most) => Say(
            $"stir from {least.TotalSeconds:0} s to {most.TotalMinutes:0} min"),
        PracticeRefusal.StandingOutside(var most) => Say(
            $"let it stand for more than 0 s and no more than {most.TotalHours:0} h at a time"),
        PracticeRefusal.StirFirst { Before: PracticeMove.Wait }
            => Say("stir it in first: what was added is floating on top and thickens nothing"),
        PracticeRefusal.StirFirst { Before: PracticeMove.Read } => Say("stir it in first: what was added is floating on top, and the "
            + "instrument would read the old body"),
        PracticeRefusal.StirFirst => Say("something that was added is not stirred in yet: stir first"),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>The players of a demonstration with their names.</summary>
    public static IReadOnlyList<NamedPath> Named(Demonstration demonstration)
        => [.. demonstration.Paths.Select(p => new NamedPath(Name(p.Player), p))];

    /// <summary>The pot's name.</summary>
    public static string Title(PracticeGame game) => Say($"Practice pot {game.Difficulty.Name} {game.Seed}");

    /// <summary>The pot in one line.</summary>
    public static string Pot(PracticeGame game) => Say($"{Title(game)} · {Facts(game)} · target {AdviceWords.Band(game.Band)}");

    /// <summary>Base and thickener.</summary>
    public static string Facts(PracticeGame game, bool withName = false)
    {
        var thickener = game.Start.Thickeners[0];
        var (low, top) = (thickener.UsualRange.Low.Percent, thickener.UsualRange.Top.Percent);
        var facts = Say($"{Shown.Number(game.Start.BaseMass.Grams)} g of base · {thickener.Name}, usually {low:0.##} to {top:0.##} %");
        return withName ? $"{Title(game)} · {facts}" : facts;
    }

    /// <summary>Minutes and seconds.</summary>
    public static string Clock(TimeSpan time) => FormattableString.Invariant($"{(int)time.TotalMinutes}:{time.Seconds:00}");

    /// <summary>A player's name on one line, not too long.</summary>
    public static string PlayerName(string text) => PlainText.Shorten(PlainText.Clean(text).Trim(), 40);

    /// <summary>A line of a game while it goes on: nothing of the truth in it.</summary>
    public static string Row(PracticeLine line)
    {
        var poured = line.Poured.Grams > 0 ? Say($"{Shown.Grams(line.Poured)} in, ") : "";
        var added = line.Base.Grams > 0 ? Say($"{Shown.Grams(line.Base)} of base in, ") : "";
        var read = line.Shown is { } shown ? Say($"read {Shown.Body(shown)}") : Say("not read");
        var stood = line.Stood is { } time ? Say($" after {Shown.Duration(time)}") : "";
        var seen = line.Signs.IsEmpty ? "" : Say($", seen: {Signs(line.Signs)}");
        return $"{Shown.Dose(line.Dose)}: {poured}{added}{read}{stood}{seen}";
    }

    /// <summary>How a game ended, in a word or two, as files know it.</summary>
    public static string Verdict(PracticeVerdict verdict) => verdict switch
    {
        PracticeVerdict.InBand => "in band",
        PracticeVerdict.Over => "over",
        _ => "short",
    };

    /// <summary>The same for people.</summary>
    public static string Ended(PracticeVerdict verdict) => verdict switch
    {
        PracticeVerdict.InBand => Say("in band", "game"),
        PracticeVerdict.Over => Say("over", "game"),
        _ => Say("short", "game"),
    };

    /// <summary>What can be seen of a pot.</summary>
    public static string Sign(PracticeSign sign) => sign == PracticeSign.Lumps ? Say("lumps") : Say("weeping");

    /// <summary>What happened in a step, in a sentence or two.</summary>
    /// <param name="path">The path.</param>
    /// <param name="place">The step's place from 0.</param>
    public static string Sentence(PracticePath path, int place)
    {
        var step = path.Steps[place];
        if (step.Line.Shown is not { } shown)
        {
            return Say($"{Poured(step)} and reads no more.");
        }

        if (place == 0 && step.Line.Stood is null)
        {
            return Say($"The base reads {Shown.Body(shown)}.");
        }

        return $"{Done(path.Player, step)}: {Shown.Body(shown)}. {Remark(path, place)}".TrimEnd();
    }

    /// <summary>How a path ended, in a sentence or two.</summary>
    public static string Ending(PracticePath path)
    {
        var score = path.Score;
        var doses = Count.Of(score.Doses, Say("dose", "pouring"), Say("doses", "pouring"));
        var end = Say($"Ends {Ended(score.Verdict)} at {Shown.Body(score.Body)}, with {doses} and {Shown.Grams(score.Poured)}.");
        if (score.Verdict != PracticeVerdict.Over)
        {
            return end + (score.Base.Grams > 0 ? Say($" {Shown.Grams(score.Base)} of base was added to save it.") : "");
        }

        var after = score.PotTotal.Grams + score.BaseToSave.Grams;
        return Say($"{end} Saving it takes {Shown.Number(score.BaseToSave.Grams)} g of base: from {Shown.Number(score.PotTotal.Grams)} g "
            + $"the pot grows to {Shown.Number(after)} g.");
    }

    /// <summary>Where a path went over, and why; null where it never did.</summary>
    public static string? WhyOver(PracticePath path)
    {
        if (path.Score.WentOverAt is not { } dose || path.Steps.IndexOf(path.Steps.First(s => s.IsOver)) is not (> 0 and var place))
        {
            return null;
        }

        var (over, before) = (path.Steps[place], path.Steps[place - 1]);
        var where = Say($"Dose {dose} took the pot over, to {Shown.Dose(over.Dose)} where it settles at {Shown.Body(over.Settled)}.");
        if (over.Settled <= path.Truth.Band.High)
        {
            return Say($"{where} That is beyond the peak at {Shown.Dose(path.Truth.Peak ?? over.Dose)}: there more thickener takes "
                + $"body away.");
        }

        if (before.PercentToCome > TellingPercent)
        {
            return Say($"{where} The reading before it was too early: {Shown.Body(before.Line.Shown ?? before.Body)} was read, "
                + $"{Shown.Body(before.Settled)} was on its way.");
        }

        if (path.Truth.OverFrom is not { } overFrom)
        {
            return where;
        }

        var wide = overFrom.Percent - path.Truth.InBandFrom.Percent;
        return Say($"{where} It added {Shown.Dose(Difference(over.Dose, before.Dose))}, and the band is only {wide:0.00} % wide here "
            + $"({Shown.Dose(path.Truth.InBandFrom)} to {Shown.Dose(overFrom)}).");
    }

    /// <summary>Why over-dosing is a dead end, on this pot.</summary>
    /// <param name="lesson">What is taught.</param>
    /// <param name="whose">Whose game it is drawn from; null for this one.</param>
    public static IEnumerable<string> Lesson(OverdoseLesson lesson, string? whose = null)
    {
        var truth = lesson.Truth;
        yield return Grams(lesson);
        if (truth.Peak is { } peak)
        {
            var beyond = Times(peak, 1.3);
            yield return Say($"The fall after the peak. The body is highest at {Shown.Dose(peak)}, {Shown.Body(truth.BodyAt(peak))}; at "
                + $"{Shown.Dose(beyond)} it is {Shown.Body(truth.BodyAt(beyond))}. Beyond the peak more thickener takes body away, and "
                + $"adding can't bring the pot back.");
        }

        yield return Say($"Weeping and lumps. From {Shown.Dose(truth.WeepsFrom)} on this pot holds more thickener than it can bind and "
            + $"weeps; more than {Shown.Dose(Times(truth.RangeTop, IncrementPolicy.StepCap))} at once, or a stir under 5 s, leaves lumps.");
        var costs = string.Join(", ", lesson.Costs.Select((c, i) => Cost(c, truth, i == 0)));
        yield return Say($"Letting down costs base. An addition can't be taken out; only base brings the dose back. {costs}: with twice "
            + $"the dose the pot has to double.");
        if (lesson.Own is { } own)
        {
            var added = Say($"{whose ?? Say("This game")}: {Shown.Dose(own.Dose)} was added where {Shown.Dose(truth.Needed)} was enough.");
            var saving = Say($"Saving it takes {Shown.Number(own.Base.Grams)} g of base: {Shown.Number(own.Before.Grams)} g become "
                + $"{Shown.Number(own.After.Grams)} g");
            yield return own.Base > own.Before
                ? Say($"{added} {saving}, more than double: split the pot and save a part.") : $"{added} {saving}.";
        }
    }

    /// <summary>
    /// What a demonstration teaches: where players went over and why, what was in the pot, why over-dosing is a dead end.
    /// </summary>
    public static IEnumerable<string> LessonOf(Demonstration demonstration)
        => demonstration.Paths.Select(p => WhyOver(p) is { } why ? $"{Text.Sentence.Capital(Name(p.Player))}. {why}" : null)
            .OfType<string>()
            .Append(Truth(demonstration.Truth))
            .Concat(Lesson(OverdoseLesson.Of(demonstration.Worst), Text.Sentence.Capital(Name(demonstration.Worst.Player))));

    /// <summary>What was in the pot, in a sentence.</summary>
    public static string Truth(PotTruth truth) => truth.OverFrom is { } over
        ? Say($"Hidden curve: '{Family(truth)}'; the target needs {Shown.Dose(truth.Needed)}, in band from "
            + $"{Shown.Dose(truth.InBandFrom)} to {Shown.Dose(over)}; it builds up with a time constant of "
            + $"{Shown.Duration(truth.TimeConstant)}.")
        : Say($"Hidden curve: '{Family(truth)}'; the target needs {Shown.Dose(truth.Needed)}, in band from "
            + $"{Shown.Dose(truth.InBandFrom)} on; it builds up with a time constant of {Shown.Duration(truth.TimeConstant)}.");

    /// <summary>The kind of curve that hides in a pot.</summary>
    public static string Family(PotTruth truth) => truth.Family switch
    {
        "steady" => Say("steady", "curve"),
        "late" => Say("late", "curve"),
        "saturating" => Say("saturating", "curve"),
        "two-step" => Say("two-step", "curve"),
        "growth" => Say("growth", "curve"),
        "kinked" => Say("kinked", "curve"),
        "rise-and-fall" => Say("rise-and-fall", "curve"),
        "step" => Say("step", "curve"),
        "table" => Say("table", "curve"),
        var other => other,
    };

    private static string Poured(PracticeStep step) => step.Line switch
    {
        { Poured.Grams: > 0, Base.Grams: > 0 } line
            => Say($"Pours {Shown.Grams(line.Poured)} and adds {Shown.Grams(line.Base)} of base"),
        { Base.Grams: > 0 } line => Say($"Lets down with {Shown.Grams(line.Base)} of base"),
        { Poured.Grams: > 0 } line => Say($"Pours {Shown.Grams(line.Poured)}, to {Shown.Dose(line.Dose)}"),
        _ => Say("Pours nothing"),
    };

    private static string Done(PracticePlayer player, PracticeStep step)
    {
        var stood = step.Line.Stood is { } time ? Shown.Duration(time) : Say("no time");
        if (step.Line is { Poured.Grams: 0, Base.Grams: 0 })
        {
            return player != PracticePlayer.Advised ? Say($"Reads again after {stood}")
                : step.Advice?.Action is BenchAction.Wait ? Say($"Is advised to wait, and reads after {stood}")
                : Say($"Is advised to read again, and reads after {stood}");
        }

        return player == PracticePlayer.Advised
            ? Say($"As advised, {Lower(Poured(step))}, and reads after {stood}") : Say($"{Poured(step)}, and reads after {stood}");
    }

    private static string Remark(PracticePath path, int place)
    {
        var (step, band) = (path.Steps[place], path.Truth.Band);
        var shown = step.Line.Shown!.Value;
        var early = step.PercentToCome > EarlyPercent;
        var signs = step.Signs.Length == 0 ? "" : Say($" Seen: {Signs(step.Signs)}.");
        string main;
        if (step.IsOver)
        {
            main = early && shown <= band.High
                ? Say($"It is over already and settles at {Shown.Body(step.Settled)}; the reading does not show it yet.")
                : shown > band.High ? Say("Over, and it stays over.") : Say("Beyond the peak: more thickener takes body away.");
        }
        else if (early)
        {
            main = path.Player == PracticePlayer.Impatient
                ? Say($"It is on its way to {Shown.Body(step.Settled)}, but this is taken for the body.")
                : Say($"It is on its way to {Shown.Body(step.Settled)}.");
        }
        else if (step.Settled >= band.Low)
        {
            main = Say("In band.");
        }
        else
        {
            main = path.Player == PracticePlayer.Advised ? Expected(step) : Say($"Short by {PercentShort(step.Settled, band):0} %.");
        }

        return main + signs;
    }

    private static string Expected(PracticeStep step) => step.Advice?.Body.Expected is { } expected
        ? Say($"The advice was to expect {Shown.Spread(expected)}.")
        : "";

    private static double PercentShort(Viscosity body, ViscosityBand band)
        => 100 * (1 - (body.MilliPascalSeconds / band.Aim.MilliPascalSeconds));

    private static string Grams(OverdoseLesson lesson)
    {
        var truth = lesson.Truth;
        var late = lesson.Greatest > truth.Needed ? lesson.Greatest : truth.Needed;
        var (best, last) = (truth.PercentForGramAt(lesson.Steepest), truth.PercentForGramAt(late));
        return last > SteadyPart * best
            ? Say($"No gram buys less than the one before. On this pot a gram changes the body by {Change(last)} at {Shown.Dose(late)}, by "
                + $"{Change(best)} at most: one dose too many takes it as far over as the dose before took it up.")
            : Say($"Less body for each gram. At {Shown.Dose(lesson.Steepest)} a gram changed the body by {Change(best)}, at "
                + $"{Shown.Dose(late)} by {Change(last)}.{Flat(truth)}");
    }

    private static string Flat(PotTruth truth) => truth.FlatFrom is { } flat
        ? Say($" From {Shown.Dose(flat)} on a gram buys under a quarter of the most that any gram bought.")
        : "";

    private static string Cost(LetDownCost cost, PotTruth truth, bool inFull)
    {
        var times = cost.Dose.Percent / truth.Needed.Percent;
        var grams = Shown.Number(cost.Base.Grams);
        return inFull ? Say($"{times:0.##} times the dose needed takes {grams} g of base") : Say($"{times:0.##} times takes {grams} g");
    }

    private static string Change(double percent) => percent.ToString("+0.0;−0.0", Numbers) + " %";

    private static Dose Times(Dose dose, double factor) => Dose.FromPercent(dose.Percent * factor);

    private static Dose Difference(Dose after, Dose before) => Dose.FromPercent(Math.Max(0, after.Percent - before.Percent));

    private static string Signs(IEnumerable<PracticeSign> signs) => string.Join(Say(" and "), signs.Select(Sign));

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
