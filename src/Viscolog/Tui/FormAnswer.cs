namespace Viscolog.Tui;

/// <summary>What came of reading a form: a value, or what is wrong and in which field.</summary>
internal sealed record FormAnswer<T>(T? Value, string? Error, int Field)
    where T : class
{
    public static FormAnswer<T> Of(T value) => new(value, null, 0);

    public static FormAnswer<T> Wrong(int field, string error) => new(null, error, field);
}
