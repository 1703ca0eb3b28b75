using System.Collections.Immutable;
using Viscolog.Output;
using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>What an event makes of a state, and what the world is then asked to do.</summary>
internal sealed record Step<TState, TEvent>(TState State, params ImmutableArray<IEffect<TEvent>> Effects)
    where TState : class
    where TEvent : class
{
    public static implicit operator Step<TState, TEvent>(TState state) => new(state);
}

/// <summary>Something that a step asks the world to do: stated as data, done on a stage.</summary>
internal interface IEffect<TEvent>
    where TEvent : class
{
    void Perform(IStage<TEvent> stage);
}

/// <summary>Where effects are performed. What comes of them goes back to the screen as an event.</summary>
internal interface IStage<TEvent>
    where TEvent : class
{
    TuiContext Context { get; }

    void Send(TEvent @event);

    /// <summary>Asks a form; null where it was left.</summary>
    T? Ask<T>(Form<T> form)
        where T : class;

    /// <summary>Runs another screen on top until it is left.</summary>
    void Show(ScreenView screen);

    /// <summary>
    /// Works an answer out beside the screen. Of several questions only the last is answered; a fault of ours is told,
    /// and the screen goes on.
    /// </summary>
    /// <param name="what">What there is none of where that fails.</param>
    /// <param name="work">Touches nothing of the screen.</param>
    /// <param name="failed">The event that tells of a fault.</param>
    void Work(string what, Func<TEvent> work, Func<string, TEvent> failed);

    void Ring();

    /// <summary>Leaves this screen.</summary>
    void Close();

    /// <summary>Puts a text into the terminal's clipboard (OSC 52 of xterm's control sequences).</summary>
    void Copy(string text);
}

/// <summary>Asks a form; its answer is the event.</summary>
internal sealed record Ask<TEvent>(Form<TEvent> Form) : IEffect<TEvent>
    where TEvent : class
{
    public void Perform(IStage<TEvent> stage)
    {
        if (stage.Ask(Form) is { } answer)
        {
            stage.Send(answer);
        }
    }
}

/// <summary>Shows another screen on top.</summary>
internal sealed record Show<TEvent>(Func<TuiContext, ScreenView> Screen) : IEffect<TEvent>
    where TEvent : class
{
    public void Perform(IStage<TEvent> stage) => stage.Show(Screen(stage.Context));
}

/// <summary>Leaves the screen.</summary>
internal sealed record Close<TEvent> : IEffect<TEvent>
    where TEvent : class
{
    public void Perform(IStage<TEvent> stage) => stage.Close();
}

/// <summary>Puts a text into the clipboard.</summary>
internal sealed record Copy<TEvent>(string Text) : IEffect<TEvent>
    where TEvent : class
{
    public void Perform(IStage<TEvent> stage) => stage.Copy(Text);
}

/// <summary>Rings the bell.</summary>
internal sealed record Ring<TEvent> : IEffect<TEvent>
    where TEvent : class
{
    public void Perform(IStage<TEvent> stage) => stage.Ring();
}

/// <summary>
/// Asks where a file is to go, writes it, and tells what became of it. What is there already is replaced only when that is said once more,
/// and where it can't be written the path is asked for again with the reason.
/// </summary>
/// <param name="Where">The form.</param>
/// <param name="Write">Writes to a path, over what is there or not, on a day.</param>
/// <param name="Told">Takes what became of it.</param>
internal sealed record Export<TEvent>(
    PathForm Where,
    Func<string, bool, DateOnly, Outcome<string>> Write,
    Func<string, TEvent> Told) : IEffect<TEvent>
    where TEvent : class
{
    public void Perform(IStage<TEvent> stage)
    {
        var asked = Where;
        var confirmed = "";
        while (stage.Ask(asked.Form()) is { } path)
        {
            if (path != confirmed && File.Exists(path))
            {
                confirmed = path;
                asked = Where with { Usual = path, About = Say("That file already exists. Enter replaces it; or type another name.") };
                continue;
            }

            var outcome = Outcome(path, path == confirmed, stage.Context.Today);
            if (outcome.Is(out var written, out var reason))
            {
                stage.Send(Told(Say($"written: {written}")));
                return;
            }

            asked = Where with { Usual = path, About = reason };
        }
    }

    private Outcome<string> Outcome(string path, bool replace, DateOnly today)
    {
        try
        {
            return Write(path, replace, today);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Refused(TerminalText.Of(Say($"{path}: cannot be written: {e.Message}")));
        }
    }
}
