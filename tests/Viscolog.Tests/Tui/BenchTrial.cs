using Viscolog.RunFiles;
using Viscolog.Store;
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
    private readonly List<int> _numbers;
    private RunFile _header;

    public BenchTrial(RunFile file, bool takesReadings = false)
    {
        (_header, _rows) = (file.WithoutRows(), [.. file.Contents()]);
        _numbers = [.. Enumerable.Range(1, _rows.Count)];
        Take(BenchSteps.Open(Run(), [], takesReadings));
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

    public Page Drawn(int width, int height, bool isAscii = false) => BenchPage.Of(State, new(width, height, isAscii, Now));

    public string Page(int width, int height, bool isAscii = false) => Drawn(width, height, isAscii).Text + "\n";

    private LoggedRun Run() => new(1, _header.With(_rows), [.. _numbers]);

    private void Log(BenchChange change, ChangeWay way)
    {
        if (change is BenchChange.Header header)
        {
            _header = way == ChangeWay.Back ? header.Before : header.After;
        }

        if (change is not BenchChange.Rows rows)
        {
            return;
        }

        foreach (var edit in way switch { ChangeWay.First => rows.First, ChangeWay.Back => rows.Back, _ => rows.Again })
        {
            switch (edit)
            {
                case RunEdit.Add add:
                    var place = add.After is { } after ? _numbers.IndexOf(after) + 1 : _rows.Count;
                    _rows.Insert(place, add.Row);
                    _numbers.Insert(place, _numbers.Count + 1);
                    break;
                case RunEdit.Void voided:
                    Mark(voided.Row, voided.Reason);
                    break;
                case RunEdit.Lift lifted:
                    Mark(lifted.Row, null);
                    break;
            }
        }
    }

    private void Mark(int number, string? reason)
    {
        var place = _numbers.IndexOf(number);
        Assert.NotEqual(reason is null, _rows[place].Void is null);
        _rows[place] = _rows[place] with { Void = reason };
    }

    /// <summary>Takes a step as the screen does.</summary>
    public void Take(Step<BenchState, BenchEvent> step)
    {
        State = step.State;
        foreach (var effect in step.Effects)
        {
            Effects.Add(effect);
            switch (effect)
            {
                case BenchEffect.Log log:
                    Log(log.Change, log.Way);
                    Do(new BenchEvent.Logged(Run(), log.Change, log.Way));
                    break;
            }
        }
    }
}
