using System.Text;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Text;

namespace Viscolog.Cli.Calls;

/// <summary>Where a command writes, and what the place it writes to can show.</summary>
internal sealed class CallOutput(TextWriter output, TextWriter error, bool showsUnicode, bool showsBold, int width, bool liveErrors = false)
{
    private bool _hasStatus;

    /// <summary>Columns to fill; 80 where nothing tells.</summary>
    public int Width => width;

    /// <summary>Whether the place shows only printable ASCII.</summary>
    public bool IsAscii => !showsUnicode;

    /// <summary>The terminal or pipe that the process writes to.</summary>
    public static CallOutput OfProcess(TextWriter output, TextWriter error)
    {
        var redirected = Console.IsOutputRedirected;
        var dumb = string.Equals(Environment.GetEnvironmentVariable("TERM"), "dumb", StringComparison.Ordinal);
        var bold = !redirected && !dumb && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        return new(
            output, error, redirected || HasUnicode(), bold, redirected ? 80 : Math.Max(40, WindowWidth()),
            !Console.IsErrorRedirected && !dumb);
    }

    /// <summary>The same place with less of what it can show.</summary>
    public CallOutput With(bool ascii, bool plain) => new(output, error, showsUnicode && !ascii, showsBold && !plain, width, liveErrors);

    public void Line(string text = "") => output.WriteLine(Shown(text));

    /// <summary>Writes a file's text as it is.</summary>
    public void Text(string text) => output.Write(text);

    public void Emphasized(string text) => output.WriteLine(showsBold ? $"\e[1m{Shown(text)}\e[0m" : Shown(text));

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

        IEnumerable<string[]> Clean() => rows().Select(r => (string[])[.. r.Select(PlainText.Clean)]);
    }

    /// <summary>Writes what is made piece by piece in UTF-8, and a line break behind it.</summary>
    public void Pieces(Action<Stream> make)
    {
        using (var pieces = new TextPieces(text => output.Write(Shown(text))))
        {
            make(pieces);
        }

        output.WriteLine();
    }

    /// <summary>Writes a text, broken to the width, each line behind the indent and with a margin free at its end.</summary>
    public void Wrapped(string text, string indent = "", int margin = 0)
    {
        foreach (var line in Paragraph.Of(text, width - indent.Length - margin))
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
        foreach (var line in Paragraph.Of(text, width - indent))
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
    public void Chart(Picture picture, int lines) => Chart(picture, Math.Min(width - 2, 100), lines);

    /// <inheritdoc cref="Chart(Picture, int)"/>
    public void Chart(Picture picture, int columns, int lines)
    {
        foreach (var line in TerminalChart.Draw(picture, columns, lines, IsAscii))
        {
            Line(line);
        }
    }

    public void Error(string text) => error.WriteLine(OneLine.Of(Shown(text)));

    /// <summary>Shows what was written so far.</summary>
    public void Flush() => output.Flush();

    /// <summary>Whether a line on standard error can be written over.</summary>
    public bool HasLiveErrors => liveErrors;

    /// <summary>Shows a passing line on standard error.</summary>
    public void Status(string text)
    {
        if (liveErrors)
        {
            error.Write($"\r{Shown(text)}\e[K");
            _hasStatus = true;
        }
        else
        {
            Error(text);
        }
    }

    /// <summary>Takes the passing line away.</summary>
    public void ClearStatus()
    {
        if (_hasStatus)
        {
            error.Write("\r\e[K");
            _hasStatus = false;
        }
    }

    private string Shown(string text) => showsUnicode ? text : AsciiText.Of(text);

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
