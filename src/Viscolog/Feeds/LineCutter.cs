using System.Text;

namespace Viscolog.Feeds;

/// <summary>
/// Cuts what comes over a wire into lines, with bounded memory whatever comes: a line ends with a line feed, a carriage return or both, and
/// what is longer than any line of text is dropped to its end.
/// </summary>
internal sealed class LineCutter
{
    /// <summary>So many bytes are looked at to tell noise from text.</summary>
    private const int Looked = 512;

    private const double NoiseFrom = 0.3;

    private readonly List<byte> _held = new(LinePattern.LongestLine);
    private bool _isTooLong;
    private bool _isInside;
    private double _strange;

    /// <summary>Whether a good part of the last bytes was no text.</summary>
    public bool IsNoise => _strange > NoiseFrom;

    /// <summary>What comes next may be the rest of a line: it is let go to its end.</summary>
    public void BeginInside() => _isInside = true;

    /// <summary>Nothing came for a while: what comes next begins a line.</summary>
    public void BeginLine() => _isInside = false;

    /// <summary>The lines that are whole now. A line that was too long comes as its beginning with a mark that no text has.</summary>
    public IEnumerable<string> Cut(ReadOnlyMemory<byte> bytes)
    {
        for (var i = 0; i < bytes.Length; i++)
        {
            var b = bytes.Span[i];
            _strange += ((b is (>= 0x20 and < 0x7F) or 0x09 or 0x0A or 0x0D or 0x02 or 0x03 ? 0 : 1) - _strange) / Looked;
            if (b is not ((byte)'\n' or (byte)'\r'))
            {
                if (_held.Count <= LinePattern.LongestLine)
                {
                    _held.Add(b);
                }
                else
                {
                    _isTooLong = true;
                }

                continue;
            }

            if (_isInside)
            {
                Drop();
                _isInside = false;
            }
            else if (_held.Count > 0)
            {
                yield return Drop();
            }
        }
    }

    /// <summary>Lets go of what is held, and gives it.</summary>
    public string Drop()
    {
        var text = Encoding.UTF8.GetString([.. _held]) + (_isTooLong ? "\ufffd" : "");
        _held.Clear();
        _isTooLong = false;
        return text;
    }
}
