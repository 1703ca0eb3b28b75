using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Materials;

/// <summary>Materials: add, change, retire.</summary>
internal static class MaterialsScreen
{
    public static KeyTable<MaterialsEvent> Keys { get; } = new(
        "Materials",
        new("Up/Down", null, "choose one", new MaterialsEvent.Moved(-1), new MaterialsEvent.Moved(1)),
        new("PgUp/PgDn", null, "ten up or down", new MaterialsEvent.Moved(-10), new MaterialsEvent.Moved(10)),
        new("Home/End", null, "the first, the last", new MaterialsEvent.Moved(-Scrolling.ToEnd), new MaterialsEvent.Moved(Scrolling.ToEnd)),
        new("Enter", "change", "change the chosen one", new MaterialsEvent.Changed()),
        new("F2", "add", "add one", new MaterialsEvent.Added()),
        new("F5", "retire or offer", "retire it, or offer it again; nothing that was used is deleted", new MaterialsEvent.Retired()),
        new(
            "F6",
            "certified oil",
            "a method: log a certified oil that was read by it; its bias is shown beside it",
            new MaterialsEvent.OilCalled()),
        new("F7", null, "every oil that was read, and what the methods make of them", new MaterialsEvent.OilsCalled()),
        new(
            "F8",
            "instrument",
            "an instrument: see what it sends, and have it learned how its lines are read",
            new MaterialsEvent.InstrumentCalled())
        { Brief = null },
        new("F9", null, "void the reading of an oil", new MaterialsEvent.OilVoided()),
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("Esc", "", "back") { Role = KeyRole.Leaves },
        new("^Q", "", "quit") { Role = KeyRole.Quits })
    {
        Above = ["Bases, thickeners, methods and specifications that new runs are offered, and instruments to listen to."],
    };

    public static ScreenView<MaterialsState, MaterialsEvent> On(TuiContext context)
        => new(context, new(_ => Keys, MaterialsSteps.Next, MaterialsPage.Of), ListMaterials.Of(context));
}
