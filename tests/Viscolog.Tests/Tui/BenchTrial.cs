using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Tui;

/// <summary>The bench screen's machine with a run in memory in place of the log.</summary>
internal sealed class BenchTrial
{
    private readonly List<FileRow> _rows;
    private RunFile _header;

    public BenchTrial(RunFile file)
    {
        (_header, _rows) = (file.WithoutRows(), [.. file.Contents()]);
        Take(BenchSteps.Open(Run(), []));
    }

    public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 9, 0, 0, TimeSpan.FromHours(1));

    public BenchState State { get; private set; } = null!;

    public List<IEffect<BenchEvent>> Effects { get; } = [];

    public static BenchTrial OfSample(string name) => new(FileText.Read(File.ReadAllText(Checkout.Sample(name + ".csv"))));

    /// <summary>The last question.</summary>
    public BenchEffect.Advise Asked => Effects.OfType<BenchEffect.Advise>().Last();

    /// <summary>What was typed last, as the log would hold it.</summary>
    public FileRow Last => _rows[^1];

    public void Do(BenchEvent @event) => Take(BenchSteps.Next(State, @event, Now));

    /// <summary>Answers the last question as the screen does.</summary>
    public void Advise() => Answer(BenchAdvisor.Of(Asked));

    /// <summary>Answers the last question with this.</summary>
    public void Answer(BenchAdvice advice) => Do(new BenchEvent.Advised(advice));

    public string Page(int width, int height, bool isAscii = false) => BenchPage.Of(State, new(width, height, isAscii, Now)).Text + "\n";

    private LoggedRun Run() => new(1, _header.With(_rows), [.. Enumerable.Range(1, _rows.Count)]);

    private void Take(Step<BenchState, BenchEvent> step)
    {
        State = step.State;
        foreach (var effect in step.Effects)
        {
            Effects.Add(effect);
            switch (effect)
            {
                case BenchEffect.AddRow add:
                    _rows.Add(add.Row);
                    Do(new BenchEvent.Logged(Run(), add.Said));
                    break;
                case BenchEffect.VoidRow voided:
                    var place = voided.Row - 1;
                    _rows[place] = _rows[place] with { Void = voided.Reason };
                    if (voided.By is { } by)
                    {
                        _rows.Insert(place + 1, by);
                    }

                    Do(new BenchEvent.Logged(Run(), voided.Said));
                    break;
                case BenchEffect.Restate restate:
                    _header = restate.Header;
                    Do(new BenchEvent.Logged(Run(), restate.Said));
                    break;
            }
        }
    }
}
