using System.Text;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Text;

namespace Viscolog.Cli.Calls;

/// <summary>Where a command writes, and what the place it writes to can show.</summary>
internal sealed class CallOutput(TerminalWriter output, TerminalWriter error, Showing showing)
{
    private readonly CallRecord _record = new();

    private CallOutput(TerminalWriter output, TerminalWriter error, Showing showing, CallRecord record)
        : this(output, error, showing) => _record = record;

    /// <summary>Why the call did not do what was asked, in the order said.</summary>
    public IReadOnlyList<Failure> Failures => _record.Failures;

    /// <summary>Whether it answered in JSON.</summary>
    public bool HasAnswered => _record.HasAnswered;

    /// <summary>Where what others write for the program goes, such as help.</summary>
    public TextWriter Writer => output;

    /// <summary>The same for their errors.</summary>
    public TextWriter ErrorWriter => error;

    /// <summary>Columns to fill; 80 where nothing tells.</summary>
    public int Width => showing.Width;

    /// <summary>Whether the place shows only printable ASCII.</summary>
    public bool IsAscii => !showing.Unicode;

    /// <summary>The terminal or pipe that the process writes to.</summary>
    public static CallOutput OfProcess(TerminalWriter output, TerminalWriter error)
    {
        var redirected = Console.IsOutputRedirected;
        var dumb = string.Equals(Environment.GetEnvironmentVariable("TERM"), "dumb", StringComparison.Ordinal);
        return new(output, error, new(redirected ? 80 : Math.Max(40, WindowWidth()))
        {
            Unicode = redirected || HasUnicode(),
            Bold = !redirected && !dumb && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
            Terminal = !redirected,
            LiveErrors = !Console.IsErrorRedirected && !dumb,
        });
    }

    /// <summary>The same place with less of what it can show.</summary>
    public CallOutput With(bool ascii, bool plain)
        => new(output, error, showing with { Unicode = showing.Unicode && !ascii, Bold = showing.Bold && !plain }, _record);

    public void Line(string text = "") => output.WriteLine(Shown(text));

    /// <summary>Writes a file's text: into a pipe as it is, on a terminal as far as it is harmless there.</summary>
    public void Text(string text)
    {
        if (showing.Terminal)
        {
            output.Write(text);
        }
        else
        {
            output.Exact(text);
        }
    }

    /// <summary>Writes JSON, whose strings hold nothing that a terminal must not be given.</summary>
    public void Json(string json)
    {
        _record.HasAnswered = true;
        output.WriteLine(TerminalText.Json(json, IsAscii));
    }

    public void Emphasized(string text)
    {
        if (!showing.Bold)
        {
            Line(text);
            return;
        }

        output.Signal("\e[1m");
        output.Write(Shown(text));
        output.Signal("\e[0m");
        output.WriteLine();
    }

    /// <summary>Writes a table, its names set apart.</summary>
    public void Table(TextTable table)
    {
        foreach (var (i, line) in table.Lines().Index())
        {
            if (i == 0)
            {
                Emphasized(line);
            }
            else
            {
                Line(line);
            }
        }
    }

    /// <summary>Writes a long table, whose rows are gone through twice and not kept.</summary>
    public void Table(string[] names, Func<IEnumerable<string[]>> rows)
    {
        var columns = new TextColumns(names);
        foreach (var row in Clean())
        {
            columns.Measure(row);
        }

        foreach (var line in columns.Lines(names))
        {
            Emphasized(line);
        }

        foreach (var line in Clean().SelectMany(r => columns.Lines(r)))
        {
            Line(line);
        }

        IEnumerable<string[]> Clean() => rows().Select(r => (string[])[.. r.Select(TextTable.Clean)]);
    }

    /// <summary>Writes JSON that is made piece by piece in UTF-8, and a line break behind it.</summary>
    public void Pieces(Action<Stream> make)
    {
        _record.HasAnswered = true;
        using (var pieces = new TextPieces(text => output.Write(TerminalText.Json(text, IsAscii))))
        {
            make(pieces);
        }

        output.WriteLine();
    }

    /// <summary>Writes a text, broken to the width, each line behind the indent and with a margin free at its end.</summary>
    public void Wrapped(string text, string indent = "", int margin = 0)
    {
        foreach (var line in Paragraph.Of(text, Width - indent.Length - margin))
        {
            Line(indent + line);
        }
    }

    /// <summary>Writes a text behind its name, broken to the width.</summary>
    /// <param name="name">The name; two columns before it are left free.</param>
    /// <param name="text">The text.</param>
    /// <param name="indent">The columns before the text.</param>
    public void Row(string name, string text, int indent)
    {
        var lead = ("  " + name).PadRight(indent);
        foreach (var line in Paragraph.Of(text, Width - indent))
        {
            Line(lead + line);
            lead = new(' ', indent);
        }
    }

    /// <summary>Says where a file was written, where one was.</summary>
    public void Written(string? path)
    {
        if (path is not null)
        {
            Line($"written: {path}");
        }
    }

    /// <summary>Writes a chart.</summary>
    public void Chart(Picture picture, int lines) => Chart(picture, Math.Min(Width - 2, 100), lines);

    /// <inheritdoc cref="Chart(Picture, int)"/>
    public void Chart(Picture picture, int columns, int lines)
    {
        foreach (var line in TerminalChart.Draw(picture, columns, lines, IsAscii))
        {
            Line(line);
        }
    }

    /// <summary>Says something beside the answer.</summary>
    public void Error(string text) => error.WriteLine(Shown(text));

    /// <summary>Says why the call does not do what was asked.</summary>
    public void Fail(Failure failure)
    {
        ClearStatus();
        _record.Failures.Add(failure);
        Error(failure.Text);
    }

    /// <inheritdoc cref="Fail(Failure)"/>
    public void Fail(string text) => Fail(Failure.Of(text));

    /// <summary>Shows what was written so far.</summary>
    public void Flush() => output.Flush();

    /// <summary>Whether a line on standard error can be written over.</summary>
    public bool HasLiveErrors => showing.LiveErrors;

    /// <summary>Shows on a terminal for how long a call has been at work, from its second second on, until it says something.</summary>
    public void BeginWork(TimeProvider clock)
    {
        if (HasLiveErrors)
        {
            _record.Work = new(clock, seconds => error.Signal(FormattableString.Invariant($"\rworking: {seconds:0} s\e[K")));
            output.BeforeWrite = error.BeforeWrite = EndWork;
        }
    }

    /// <summary>Takes that line away for good.</summary>
    public void EndWork()
    {
        if (_record.Work?.End() == true)
        {
            error.Signal("\r\e[K");
        }

        _record.Work = null;
    }

    /// <summary>Shows a passing line on standard error.</summary>
    public void Status(string text)
    {
        EndWork();
        if (HasLiveErrors)
        {
            error.Signal("\r");
            error.Write(Shown(text));
            error.Signal("\e[K");
            _record.HasStatus = true;
        }
        else
        {
            Error(text);
        }
    }

    /// <summary>Takes the passing line away.</summary>
    public void ClearStatus()
    {
        if (_record.HasStatus)
        {
            error.Signal("\r\e[K");
            _record.HasStatus = false;
        }
    }

    private string Shown(string text) => showing.Unicode ? TerminalText.Of(text) : AsciiText.Of(TerminalText.Of(text));

    private static bool HasUnicode()
    {
        if (OperatingSystem.IsWindows())
        {
            return Console.OutputEncoding.CodePage == Encoding.UTF8.CodePage;
        }

        string[] names = ["LC_ALL", "LC_CTYPE", "LANG"];
        var locale = names.Select(Environment.GetEnvironmentVariable).FirstOrDefault(v => !string.IsNullOrEmpty(v)) ?? "";
        return locale.Replace("-", "", StringComparison.Ordinal).Contains("utf8", StringComparison.OrdinalIgnoreCase);
    }

    private static int WindowWidth()
    {
        try
        {
            return Console.WindowWidth;
        }
        catch (IOException)
        {
            return 80;
        }
    }
}

/// <summary>What one call has said, whichever look it said it with.</summary>
internal sealed class CallRecord
{
    /// <summary>Why it did not do what was asked.</summary>
    public List<Failure> Failures { get; } = [];

    /// <summary>Whether it answered in JSON.</summary>
    public bool HasAnswered { get; set; }

    /// <summary>Whether a passing line stands on standard error.</summary>
    public bool HasStatus { get; set; }

    /// <summary>What shows for how long it has been at work; null once it said something.</summary>
    public WorkLine? Work { get; set; }
}

/// <summary>What a place can show.</summary>
/// <param name="Width">Columns to fill.</param>
internal sealed record Showing(int Width)
{
    /// <summary>Letters and signs beyond ASCII.</summary>
    public bool Unicode { get; init; } = true;

    /// <summary>Bold letters.</summary>
    public bool Bold { get; init; }

    /// <summary>Whether it is a terminal, and no file or pipe.</summary>
    public bool Terminal { get; init; }

    /// <summary>Whether a line on standard error can be written over.</summary>
    public bool LiveErrors { get; init; }
}
