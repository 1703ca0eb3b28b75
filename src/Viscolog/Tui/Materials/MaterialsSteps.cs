using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.Feeds;
using Viscolog.MaterialFiles;
using Viscolog.Store;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;
using MaterialsStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Materials.MaterialsState, Viscolog.Tui.Materials.MaterialsEvent>;

namespace Viscolog.Tui.Materials;

/// <summary>The list of materials as a machine.</summary>
internal static class MaterialsSteps
{
    public static MaterialsStep Next(MaterialsState state, MaterialsEvent @event, DateTimeOffset now) => @event switch
    {
        MaterialsEvent.Moved moved => state.Move(moved.By),
        MaterialsEvent.Added => Ask(state, MaterialForm.Kind()),
        MaterialsEvent.KindChosen chosen => Ask(state, MaterialForm.Of(chosen.Kind, null)),
        MaterialsEvent.Changed => state.Current is { } row ? Ask(state, MaterialForm.Of(MaterialCells.KindOf(row.Material), row)) : state,
        MaterialsEvent.Retired => state.Current is { } row
            ? new MaterialsStep(state, new KeepMaterial(row with { Material = row.Material with { IsRetired = !row.Material.IsRetired } }))
            : state,
        MaterialsEvent.Typed typed => new MaterialsStep(state, new KeepMaterial(typed.Row)),
        MaterialsEvent.OilCalled => state.Current?.Material is Material.OfMethod method
            ? new MaterialsStep(
                state,
                new ReadOil<MaterialsEvent>(
                    method.Method.Method,
                    (outcome, name) => new MaterialsEvent.Logged(TuiContext.Words(outcome, name))))
            : state,
        MaterialsEvent.InstrumentCalled => Ask(state, LearnForms.Source(state.Current?.Material as Material.OfInstrument)),
        MaterialsEvent.SourceTyped typed => new MaterialsStep(state, new LearnInstrument(typed.Name, typed.Source)),
        MaterialsEvent.OilsCalled => new MaterialsStep(state, new Show<MaterialsEvent>(OilList.On)),
        MaterialsEvent.OilVoided => Ask(state, OilForm.Void()),
        MaterialsEvent.OilVoidTyped typed => new MaterialsStep(state, new VoidOil(typed.Number, typed.Reason)),
        MaterialsEvent.Logged logged => new MaterialsStep(state with { Said = logged.Said }, new ListMaterials()),
        MaterialsEvent.Listed listed => state with { All = listed.List.All, Drifts = listed.List.Drifts },
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static MaterialsStep Ask(MaterialsState state, Form<MaterialsEvent> form)
        => new MaterialsStep(state, new Ask<MaterialsEvent>(form));
}

/// <summary>What can happen on the list of materials. The set of cases is closed.</summary>
internal abstract record MaterialsEvent
{
    private MaterialsEvent()
    {
    }

    /// <summary>Another line was chosen.</summary>
    internal sealed record Moved(int By) : MaterialsEvent;

    /// <summary>A material is to be added.</summary>
    internal sealed record Added : MaterialsEvent;

    /// <summary>The kind of the one to be added is known.</summary>
    internal sealed record KindChosen(string Kind) : MaterialsEvent;

    /// <summary>The chosen one is to be changed.</summary>
    internal sealed record Changed : MaterialsEvent;

    /// <summary>The chosen one is to be retired, or offered again.</summary>
    internal sealed record Retired : MaterialsEvent;

    /// <summary>A material is to be kept as it was typed.</summary>
    internal sealed record Typed(MaterialRow Row) : MaterialsEvent;

    /// <summary>A certified oil is to be logged for the chosen method.</summary>
    internal sealed record OilCalled : MaterialsEvent;

    /// <summary>An instrument is to be learned.</summary>
    internal sealed record InstrumentCalled : MaterialsEvent;

    /// <summary>Its name is known, and where its lines come from.</summary>
    internal sealed record SourceTyped(string Name, LineSource Source) : MaterialsEvent;

    /// <summary>The oils were called for.</summary>
    internal sealed record OilsCalled : MaterialsEvent;

    /// <summary>The reading of an oil is to be voided.</summary>
    internal sealed record OilVoided : MaterialsEvent;

    /// <summary>Which, and why.</summary>
    internal sealed record OilVoidTyped(int Number, string Reason) : MaterialsEvent;

    /// <summary>The log was added to, or not.</summary>
    internal sealed record Logged(string Said) : MaterialsEvent;

    /// <summary>The log's materials, and how its methods read certified oils.</summary>
    internal sealed record Listed(MaterialsState List) : MaterialsEvent;
}

/// <summary>Keeps a material in the log.</summary>
internal sealed record KeepMaterial(MaterialRow Row) : IEffect<MaterialsEvent>
{
    public void Perform(IStage<MaterialsEvent> stage)
        => stage.Send(new MaterialsEvent.Logged(TuiContext.Words(stage.Context.Log.State([Row]).Outcome, Row.Material.Name)));
}

/// <summary>Listens to an instrument until its lines are understood, or the screen is left.</summary>
internal sealed record LearnInstrument(string Name, LineSource Source) : IEffect<MaterialsEvent>
{
    public void Perform(IStage<MaterialsEvent> stage)
    {
        using var desk = new FeedDesk(Name, Source, stage.Context.Clock);
        desk.Start();
        stage.Show(LearnScreen.On(stage.Context with { Desk = desk }, Name, Source));
        stage.Send(new MaterialsEvent.Listed(ListMaterials.Of(stage.Context)));
    }
}

/// <summary>Makes the reading of an oil void.</summary>
internal sealed record VoidOil(int Number, string Reason) : IEffect<MaterialsEvent>
{
    public void Perform(IStage<MaterialsEvent> stage)
        => stage.Send(
            new MaterialsEvent.Logged(
                TuiContext.Words(
                    stage.Context.Log.VoidOil(Number, Reason),
                    Say($"oil reading {Number} is void"))));
}

/// <summary>Reads what the log keeps.</summary>
internal sealed record ListMaterials : IEffect<MaterialsEvent>
{
    public void Perform(IStage<MaterialsEvent> stage) => stage.Send(new MaterialsEvent.Listed(Of(stage.Context)));

    public static MaterialsState Of(TuiContext context) => new(
        [
            .. context.Log.Materials().OrderBy(m => MaterialKind.All.ToList().IndexOf(MaterialCells.KindOf(m.Material)))
                .ThenBy(m => m.Material.Name, StringComparer.Ordinal),
        ])
    {
        Drifts = BenchKnowledge.Of(context.Log).Drifts().GroupBy(d => d.Condition.Method.Id, StringComparer.Ordinal)
            .ToImmutableDictionary(
                g => g.Key, g => string.Join("; ", g.Select(d => DriftWords.Brief(d, context.Today))), StringComparer.Ordinal),
    };
}
