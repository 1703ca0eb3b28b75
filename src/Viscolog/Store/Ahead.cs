namespace Viscolog.Store;

/// <summary>Goes through items one by one and looks ahead where asked; only what was looked at is held.</summary>
internal sealed class Ahead<T>(IEnumerable<T> all) : IDisposable
{
    private readonly IEnumerator<T> _rest = all.GetEnumerator();
    private readonly LinkedList<T> _seen = [];

    /// <summary>The place of the item at hand, from 0.</summary>
    public int Place { get; private set; }

    /// <summary>Whether no item is left.</summary>
    public bool IsAtEnd => _seen.First is null && !See();

    /// <summary>The item at hand.</summary>
    /// <exception cref="InvalidOperationException">None is left.</exception>
    public T Now => IsAtEnd ? throw new InvalidOperationException("no item is left") : _seen.First!.Value;

    /// <summary>The one before it.</summary>
    public T? Before { get; private set; }

    /// <summary>Those behind it, in order.</summary>
    public IEnumerable<T> Later()
    {
        for (var item = IsAtEnd ? null : _seen.First; item is not null && (item.Next is not null || See()); item = item.Next)
        {
            yield return item.Next!.Value;
        }
    }

    /// <summary>Goes on to the next.</summary>
    public void Move()
    {
        (Before, Place) = (Now, Place + 1);
        _seen.RemoveFirst();
    }

    /// <inheritdoc/>
    public void Dispose() => _rest.Dispose();

    private bool See()
    {
        if (!_rest.MoveNext())
        {
            return false;
        }

        _seen.AddLast(_rest.Current);
        return true;
    }
}
