using System.Text;

namespace Viscolog.Tests.Support;

/// <summary>A writer that fails in a way nobody foresaw.</summary>
internal sealed class BreakingWriter : TextWriter
{
    public override Encoding Encoding => Encoding.UTF8;

    public override void Write(char value) => throw new InvalidOperationException("broken on purpose");
}
