using System.Text;

namespace Viscolog.Text;

/// <summary>
/// The one way to standard output and standard error. Whatever is written passes <see cref="TerminalText"/>; what the program itself
/// says to a terminal goes by <see cref="Signal"/>, and a file that is asked for on a pipe by <see cref="Exact"/>.
/// </summary>
internal sealed class TerminalWriter : TextWriter
{
    private readonly TextWriter _to;
    private char? _high;

    /// <summary>A writer whose end closes the other one.</summary>
    public TerminalWriter(TextWriter to)
    {
        _to = to;
        NewLine = "\n";
    }

    /// <summary>Done before something is written; a signal does not count.</summary>
    public Action? BeforeWrite { get; set; }

    public override Encoding Encoding => _to.Encoding;

    public override void Write(char value)
    {
        if (char.IsHighSurrogate(value))
        {
            _high = value;
            return;
        }

        Write(_high is { } high ? new string([high, value]) : value.ToString());
    }

    public override void Write(string? value)
    {
        _high = null;
        BeforeWrite?.Invoke();
        Guarded(() => _to.Write(TerminalText.Lines(value ?? "")));
    }

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(ReadOnlySpan<char> buffer) => Write(new string(buffer));

    public override void WriteLine(string? value) => Write(value + NewLine);

    /// <summary>Writes what the program itself says to a terminal.</summary>
    public void Signal(string sequence) => Guarded(() => _to.Write(sequence));

    /// <summary>Writes text as it is.</summary>
    public void Exact(string text)
    {
        BeforeWrite?.Invoke();
        Guarded(() => _to.Write(text));
    }

    public override void Flush() => Guarded(_to.Flush);

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            try
            {
                _to.Dispose();
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // What could not be written has shown itself when it was flushed.
            }
        }

        base.Dispose(disposing);
    }

    // Told apart from what goes wrong with files.
    private static void Guarded(Action write)
    {
        try
        {
            write();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new OutputLost(e.Message, e);
        }
    }
}

/// <summary>Standard output or standard error takes nothing more.</summary>
internal sealed class OutputLost : Exception
{
    // Linux's EPIPE.
    private const int BrokenPipe = 32;

    public OutputLost(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public OutputLost(string message)
        : base(message)
    {
    }

    public OutputLost()
    {
    }

    /// <summary>Whether whoever read a pipe has gone, so that nobody is left to tell.</summary>
    public bool IsPipe => InnerException is IOException { HResult: BrokenPipe };
}
