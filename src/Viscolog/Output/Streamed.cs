namespace Viscolog.Output;

/// <summary>Long rows of items, worked on beside their reading.</summary>
internal static class Streamed
{
    private const int Chunk = 512;

    /// <summary>What is made of each item, in order, on the other cores while more are read; only some chunks are held at a time.</summary>
    public static IEnumerable<TMade> InOrder<TItem, TMade>(IEnumerable<TItem> items, Converter<TItem, TMade> make)
    {
        var ahead = new Queue<Task<TMade[]>>();
        foreach (var chunk in items.Chunk(Chunk))
        {
            ahead.Enqueue(Task.Run(() => Array.ConvertAll(chunk, make)));
            foreach (var made in ahead.Count > Environment.ProcessorCount ? ahead.Dequeue().GetAwaiter().GetResult() : [])
            {
                yield return made;
            }
        }

        while (ahead.TryDequeue(out var last))
        {
            foreach (var made in last.GetAwaiter().GetResult())
            {
                yield return made;
            }
        }
    }
}
