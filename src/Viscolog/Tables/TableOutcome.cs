namespace Viscolog.Tables;

/// <summary>What came of reading a file. The set of cases is closed.</summary>
/// <typeparam name="T">What it holds.</typeparam>
internal abstract record TableOutcome<T>
{
    private TableOutcome()
    {
    }

    /// <summary>What was found, with what was read.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="file">What was read; asked where nothing was refused.</param>
    public static TableOutcome<T> Of(Findings findings, Func<T> file)
        => findings.Refusal is { } refusal ? new Refused(refusal) : new Read(file());

    /// <summary>Reads the file at a path.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="kind">What is expected there, such as "a run file".</param>
    /// <param name="parse">Reads the bytes of the file of a name.</param>
    public static TableOutcome<T> At(string path, string kind, Func<string, ReadOnlyMemory<byte>, TableOutcome<T>> parse)
    {
        var (bytes, refusal) = InputFile.Read(path, kind, CancellationToken.None);
        return refusal is null ? parse(InputFile.NameOf(path), bytes) : new Refused(refusal);
    }

    /// <summary>It was read whole.</summary>
    internal sealed record Read(T File) : TableOutcome<T>;

    /// <summary>It was refused whole.</summary>
    internal sealed record Refused(Refusal Refusal) : TableOutcome<T>;
}
