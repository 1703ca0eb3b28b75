using System.Globalization;
using Viscolog.Tables;

namespace Viscolog.RunFiles;

/// <summary>
/// A column that the format knows: how a row's cell is read and written, in a run file and in the journal. The set of cases is closed.
/// </summary>
/// <param name="Name">Its name in the header row, and in the journal.</param>
/// <param name="Range">The numbers it takes; null for text.</param>
internal abstract record Column(string Name, NumberRange? Range)
{
    /// <summary>What is looked at before a cell's text: what has to stand there instead of it; null where the cell may be filled.</summary>
    public Func<RowDraft, string?>? Free { get; init; }

    /// <summary>
    /// What a row holds in it: a text, a double, or seconds as a decimal; null where it holds nothing or the column is only read.
    /// </summary>
    public abstract object? Of(FileRow row);

    /// <summary>What a row writes in it; null for an empty cell.</summary>
    public string? Show(FileRow row) => Of(row) switch
    {
        null => null,
        double number => FileNumbers.Show(number),
        decimal seconds => seconds.ToString("0.#######", CultureInfo.InvariantCulture),
        var text => (string)text,
    };

    /// <summary>Takes a cell's text into a row; null, or what ought to stand there.</summary>
    public string? Take(RowDraft row, string text, FileNumbers numbers) => Free?.Invoke(row) ?? Read(row, text, numbers);

    /// <summary>Takes what <see cref="Of"/> gave into a row; null, or what ought to stand there.</summary>
    public abstract string? Restore(RowDraft row, object held);

    private protected abstract string? Read(RowDraft row, string text, FileNumbers numbers);

    /// <summary>A text.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Get">The text of a row.</param>
    /// <param name="Put">Puts a text into a row; null, or what ought to stand there.</param>
    internal sealed record Text(string Name, Func<FileRow, string?> Get, Func<RowDraft, string, string?> Put) : Column(Name, null)
    {
        /// <inheritdoc/>
        public override object? Of(FileRow row) => Get(row);

        /// <inheritdoc/>
        public override string? Restore(RowDraft row, object held) => held is string text ? Put(row, text) : "a text";

        private protected override string? Read(RowDraft row, string text, FileNumbers numbers) => Put(row, text);
    }

    /// <summary>A number.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Range">The numbers it takes.</param>
    /// <param name="Get">The number of a row; null for a column that is only read.</param>
    /// <param name="Put">Puts a number into a row.</param>
    internal sealed record Number(
        string Name,
        NumberRange Range,
        Func<FileRow, double?>? Get,
        Action<RowDraft, double> Put) : Column(Name, Range)
    {
        /// <inheritdoc/>
        public override object? Of(FileRow row) => Get?.Invoke(row);

        /// <inheritdoc/>
        public override string? Restore(RowDraft row, object held)
        {
            if (held is double number && Get is not null)
            {
                Put(row, number);
                return null;
            }

            return "a number";
        }

        private protected override string? Read(RowDraft row, string text, FileNumbers numbers)
        {
            if (numbers.Read(text, Range!, out var expected) is { } number)
            {
                Put(row, number);
            }

            return expected;
        }
    }

    /// <summary>A time in seconds. Decimals hold every tick of it; a double would not.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Range">The seconds it takes.</param>
    /// <param name="Get">The time of a row.</param>
    /// <param name="Put">Puts a time into a row.</param>
    internal sealed record Seconds(
        string Name,
        NumberRange Range,
        Func<FileRow, TimeSpan?> Get,
        Action<RowDraft, TimeSpan> Put) : Column(Name, Range)
    {
        /// <inheritdoc/>
        public override object? Of(FileRow row) => Get(row) is { } span ? (decimal)span.Ticks / TimeSpan.TicksPerSecond : null;

        /// <inheritdoc/>
        public override string? Restore(RowDraft row, object held)
        {
            if (held is decimal seconds and >= 0)
            {
                Put(row, TimeSpan.FromTicks((long)(seconds * TimeSpan.TicksPerSecond)));
                return null;
            }

            return "seconds, 0 or more";
        }

        private protected override string? Read(RowDraft row, string text, FileNumbers numbers)
        {
            if (numbers.Read(text, Range!, out var expected) is { } seconds)
            {
                Put(row, FileNumbers.Span(seconds));
            }

            return expected;
        }
    }
}
