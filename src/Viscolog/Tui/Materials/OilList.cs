using Viscolog.Store;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Materials;

/// <summary>Every certified oil that was read, and how the methods read them.</summary>
internal static class OilList
{
    public static ScreenView On(TuiContext context)
    {
        var drifts = BenchKnowledge.Of(context.Log).Drifts();
        var oils = context.Log.Oils();
        return HelpScreen.On(context, Say("Certified oils"), columns => oils.Count == 0
            ? [Say("none yet: on the list of materials F6 logs one for the chosen method")]
            :
            [
                .. drifts.SelectMany(d => Paragraph.Of(DriftWords.Of(d, context.Today), columns)),
                "",
                .. DriftWords.Table(oils.Select(o => (o.Number, o.Row.Reading, o.Row.Void))).Lines(columns),
            ]);
    }
}
