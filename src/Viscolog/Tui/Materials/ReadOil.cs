using Viscolog.Core.Measuring;
using Viscolog.Store;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Materials;

/// <summary>Asks for a certified oil that was read by a method, and logs it.</summary>
/// <param name="Method">The method.</param>
/// <param name="Then">The event of what became of it, with the oil's name.</param>
internal sealed record ReadOil<TEvent>(Method Method, Func<WriteOutcome, string, TEvent> Then) : IEffect<TEvent>
    where TEvent : class
{
    public void Perform(IStage<TEvent> stage)
    {
        var log = stage.Context.Log;
        if (stage.Ask(OilForm.Of(Method, log.Oils() is [.., var last] ? last.Row : null, stage.Context.Today)) is { } row)
        {
            stage.Send(Then(log.AddOil(row), row.Reading.Oil.Name));
        }
    }
}
