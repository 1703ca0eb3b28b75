using System.Text;

namespace Viscolog.Tests.Fuzz;

/// <summary>
/// Gives a reader one changed input after the other. Where the program was built to tell which of its branches were taken, an input that
/// takes a new one is kept and changed further; else what was taken or refused in a new way stands for that.
/// </summary>
internal sealed class Fuzzer(Reader reader, int seed, byte[]? branches = null)
{
    private const int MostKept = 4000;

    // The same numbers on every machine and in every run.
    private readonly Random _random = new(seed);
    private readonly List<byte[]> _kept = [.. reader.Seeds.Select(Encoding.UTF8.GetBytes)];
    private readonly bool[] _seen = new bool[branches?.Length ?? 0];

    /// <summary>Cases tried.</summary>
    public long Cases { get; private set; }

    /// <summary>Of them, those that the reader took.</summary>
    public long Taken { get; private set; }

    /// <summary>Inputs that are kept to be changed.</summary>
    public int Kept => _kept.Count;

    /// <summary>Branches taken so far.</summary>
    public int Branches => _seen.Count(s => s);

    /// <summary>The input at hand.</summary>
    public byte[] Current { get; private set; } = [];

    /// <summary>Tries so many; the first input of which something did not hold, with what that was.</summary>
    public (byte[] Input, Exception Fault)? Run(long cases)
    {
        var mutation = new Mutation(_random);
        for (var left = cases; left > 0; left--)
        {
            Current = mutation.Of(Pick(), Pick());
            Cases++;
            Array.Clear(branches ?? []);
            bool taken;
            try
            {
                taken = reader.Read(Current);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                return (Current, e);
            }

            Taken += taken ? 1 : 0;
            if (_kept.Count < MostKept && (branches is null ? taken && _random.Next(200) == 0 : IsNew()))
            {
                _kept.Add(Current);
            }
        }

        return null;
    }

    /// <summary>An input as text that can be put into a test.</summary>
    public static string Shown(ReadOnlySpan<byte> input) => Convert.ToBase64String(input);

    private byte[] Pick() => _kept[_random.Next(_kept.Count)];

    private bool IsNew()
    {
        var any = false;
        for (var i = 0; i < _seen.Length; i++)
        {
            if (branches![i] != 0 && !_seen[i])
            {
                _seen[i] = any = true;
            }
        }

        return any;
    }
}
