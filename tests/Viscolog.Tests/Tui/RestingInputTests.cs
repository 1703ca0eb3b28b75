using Terminal.Gui.App;
using Viscolog.Tui;

namespace Viscolog.Tests.Tui;

/// <summary>The reader of keys that waits for them.</summary>
public sealed class RestingInputTests
{
    /// <summary>The toolkit has no way to say so; another version of it may keep its reader elsewhere.</summary>
    [Fact]
    public void The_toolkit_takes_this_reader_in_place_of_its_own()
    {
        using var app = Application.Create();
        Assert.True(RestingInput.GiveTo(app, () => { }));
    }
}
