using System.Reflection;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;

namespace Viscolog.Tui;

/// <summary>
/// The toolkit's reader of keys, which waits for them: its own looks fifty times a second whether one came, which is most of what the
/// screens cost at rest.
/// </summary>
/// <param name="came">Is told when something is to be read, and when it has been read.</param>
internal sealed class RestingInput(Action came) : AnsiInput
{
    /// <summary>So often it is seen whether the screens have ended.</summary>
    private const int LongestRest = 200;

    private readonly PollEntry[] _keys = [new() { File = SystemPoll.Keys, Events = SystemPoll.Readable }];

    private bool _hasRead;

    /// <summary>Begins with this reader, where keys can be waited for, else with the toolkit's own.</summary>
    /// <param name="app">What begins.</param>
    /// <param name="came">Is told, on the reader's thread, when a key has come.</param>
    public static void Begin(IApplication app, Action came)
    {
        if (SystemPoll.CanWaitForKeys)
        {
            GiveTo(app, came);
        }

        app.Init();
    }

    /// <summary>
    /// Puts this reader in the place of the toolkit's own, which can't be set from outside; whether that could be done.
    /// </summary>
    public static bool GiveTo(IApplication app, Action came)
    {
        var parts = app.GetType().GetField("_componentFactory", BindingFlags.Instance | BindingFlags.NonPublic);
        if (parts?.FieldType != typeof(IComponentFactory))
        {
            return false;
        }

        parts.SetValue(app, new Factory(came));
        return true;
    }

    /// <inheritdoc/>
    public override bool Peek()
    {
        // Whoever rests until a key comes may find it gone: this thread was there first.
        if (_hasRead || SystemPoll.Wait(_keys, LongestRest) > 0)
        {
            came();
        }

        return _hasRead = base.Peek();
    }

    private sealed class Factory(Action came) : AnsiComponentFactory(null!, null!, null!)
    {
        public override IInput<char> CreateInput() => new RestingInput(came);
    }
}
