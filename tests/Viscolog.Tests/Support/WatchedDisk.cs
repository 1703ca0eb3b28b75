using System.Text;
using Viscolog.Output;

namespace Viscolog.Tests.Support;

/// <summary>A disk that remembers what was done to it, a line each, and on which a step can be made to fail.</summary>
internal sealed class WatchedDisk : Disk
{
    private readonly List<string> _done = [];

    /// <summary>The step that fails, by the beginning of its line; null for none.</summary>
    public string? Fails { get; set; }

    /// <summary>The step that fails, counted from 1, and whether all later ones fail too; null for none.</summary>
    public (int Step, bool Stays)? FailsAt { get; set; }

    /// <summary>Steps so far, while one of them is to fail.</summary>
    public int Steps { get; private set; }

    /// <summary>The text of what was written, in order.</summary>
    public List<string> Written { get; } = [];

    /// <summary>What was done since it was last asked; passing names stand as "a passing file".</summary>
    public string[] Done()
    {
        string[] done = [.. _done];
        _done.Clear();
        Written.Clear();
        return done;
    }

    public override void Write(FileStream file, ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty)
        {
            return;
        }

        if (IsNextToFail)
        {
            // A full disk takes a part.
            base.Write(file, bytes[..(bytes.Length / 2)]);
        }

        Do($"write {Name(file.Name)}");
        Written.Add(Encoding.UTF8.GetString(bytes));
        base.Write(file, bytes);
    }

    public override void Flush(FileStream file)
    {
        Do($"flush {Name(file.Name)}");
        base.Flush(file);
    }

    public override void Cut(FileStream file, long length)
    {
        Do($"cut {Name(file.Name)}");
        base.Cut(file, length);
    }

    public override void Move(string from, string to, bool overwrite)
    {
        Do($"move {Name(from)} to {Name(to)}");
        base.Move(from, to, overwrite);
    }

    public override void Delete(string path)
    {
        if (File.Exists(path))
        {
            Do($"delete {Name(path)}");
        }

        base.Delete(path);
    }

    public override bool FlushFolder(string folder)
    {
        Do($"flush folder {Name(folder)}");
        return base.FlushFolder(folder);
    }

    private static string Name(string path)
    {
        var name = Path.GetFileName(path);
        return name.StartsWith('.') ? "a passing file" : name.StartsWith("viscolog-test-", StringComparison.Ordinal) ? "above" : name;
    }

    private bool IsNextToFail => FailsAt is var (step, stays) && (Steps + 1 == step || (stays && Steps + 1 > step));

    private void Do(string line)
    {
        _done.Add(line);
        var fails = IsNextToFail;
        Steps += FailsAt is null ? 0 : 1;
        if (fails)
        {
            throw new IOException("no space left on the disk");
        }

        if (Fails is { } step && line.StartsWith(step, StringComparison.Ordinal))
        {
            throw new IOException("the disk gave up");
        }
    }
}
