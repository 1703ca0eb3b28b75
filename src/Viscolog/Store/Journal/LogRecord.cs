using System.Text.Json.Serialization;
using Viscolog.RunFiles;

namespace Viscolog.Store.Journal;

/// <summary>What one line of the journal says. The set of cases is closed; docs/file-formats.md describes the lines.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Begun), "log")]
[JsonDerivedType(typeof(RunStated), "run")]
[JsonDerivedType(typeof(RowAdded), "row")]
[JsonDerivedType(typeof(RowVoided), "void")]
[JsonDerivedType(typeof(VoidLifted), "void-lifted")]
[JsonDerivedType(typeof(ClockSet), "clock")]
[JsonDerivedType(typeof(RunArchived), "archived")]
[JsonDerivedType(typeof(RunHanded), "handed")]
[JsonDerivedType(typeof(MaterialStated), "material")]
[JsonDerivedType(typeof(OilRead), "oil")]
[JsonDerivedType(typeof(OilVoided), "oil-void")]
[JsonDerivedType(typeof(BatchBegun), "batch")]
[JsonDerivedType(typeof(BatchEnded), "end")]
internal abstract record LogRecord
{
    private LogRecord()
    {
    }

    /// <summary>When it was logged, ISO 8601 in UTC; inside a batch the batch says it.</summary>
    [JsonPropertyOrder(9)]
    public string? At { get; init; }

    /// <summary>The first line: which log this is.</summary>
    /// <param name="Version">The version of the journal's format.</param>
    /// <param name="Log">The log's own UUID.</param>
    internal sealed record Begun(int Version, Guid Log) : LogRecord;

    /// <summary>A run's header: of a new run, or stated anew.</summary>
    /// <param name="Run">The run's number in this log, from 1.</param>
    /// <param name="Id">The run's UUID.</param>
    /// <param name="Header">Lines <c>key: value</c> as in a run file.</param>
    /// <param name="Columns">Names of the unknown columns; null where there are none.</param>
    internal sealed record RunStated(int Run, Guid Id, string[] Header, string[]? Columns = null) : LogRecord;

    /// <summary>A row of a run.</summary>
    /// <param name="Run">The run's number.</param>
    /// <param name="Row">The row's number in the run, from 1, in the order in which rows were logged.</param>
    /// <param name="Is">What it says.</param>
    /// <param name="After">The row that it follows; null where it follows the run's last.</param>
    internal sealed record RowAdded(int Run, int Row, FileRow Is, [property: JsonPropertyOrder(2)] int? After = null) : LogRecord
    {
        private FileRow? _is = Is;

        /// <summary>What it says; read from the JSON where that alone is at hand.</summary>
        [JsonPropertyOrder(1)]
        public FileRow Is
        {
            get => _is ??= RowJson.Read(Json!.Value.Span);
            init => _is = value;
        }

        /// <summary>What it says as JSON, where that is at hand; else null.</summary>
        [JsonIgnore]
        public ReadOnlyMemory<byte>? Json { get; private init; }

        /// <summary>A row whose JSON is at hand. The journal takes it as it is, so it is read only where somebody asks.</summary>
        public static RowAdded Of(int run, int row, ReadOnlyMemory<byte> json, int? after = null)
            => new(run, row, null!, after) { Json = json };
    }

    /// <summary>A row counts no more.</summary>
    /// <param name="Run">The run's number.</param>
    /// <param name="Row">The row's number.</param>
    /// <param name="Reason">Why.</param>
    internal sealed record RowVoided(int Run, int Row, string Reason) : LogRecord;

    /// <summary>A row that was made void counts again.</summary>
    /// <param name="Run">The run's number.</param>
    /// <param name="Row">The row's number.</param>
    internal sealed record VoidLifted(int Run, int Row) : LogRecord;

    /// <summary>The clock of a run's last step was started, stopped, set or put back.</summary>
    /// <param name="Run">The run's number.</param>
    /// <param name="Began">When stirring began, ISO 8601; null where it has not.</param>
    /// <param name="Ended">When stirring ended and standing began, ISO 8601; null while the pot is being stirred.</param>
    internal sealed record ClockSet(int Run, string? Began = null, string? Ended = null) : LogRecord;

    /// <summary>A run was put away from the list of runs, or brought back to it.</summary>
    /// <param name="Run">The run's number.</param>
    /// <param name="Is">Whether it is put away.</param>
    internal sealed record RunArchived(int Run, bool Is) : LogRecord;

    /// <summary>A run was handed to another bench, or is this bench's again.</summary>
    /// <param name="Run">The run's number.</param>
    /// <param name="To">The UUID of the log that goes on with it; null where this one does.</param>
    internal sealed record RunHanded(int Run, Guid? To = null) : LogRecord;

    /// <summary>A material, new or stated anew.</summary>
    /// <param name="Is">What it says.</param>
    internal sealed record MaterialStated(MaterialContent Is) : LogRecord;

    /// <summary>A certified oil was read by a method.</summary>
    /// <param name="Oil">The reading's number in this log, from 1.</param>
    /// <param name="Is">The cells of its row in an oils file, by column.</param>
    internal sealed record OilRead(int Oil, IReadOnlyDictionary<string, string> Is) : LogRecord;

    /// <summary>A reading of a certified oil counts no more.</summary>
    /// <param name="Oil">The reading's number.</param>
    /// <param name="Reason">Why.</param>
    internal sealed record OilVoided(int Oil, string Reason) : LogRecord;

    /// <summary>The next lines count together or not at all.</summary>
    /// <param name="Lines">How many, without the line that ends them.</param>
    internal sealed record BatchBegun(int Lines) : LogRecord;

    /// <summary>The batch is whole.</summary>
    internal sealed record BatchEnded : LogRecord;
}

/// <summary>What a material says: the cells of its row in a materials file, by column.</summary>
/// <param name="Kind">base, thickener, method or specification.</param>
/// <param name="Name">Its name, once for each kind.</param>
/// <param name="Cells">The other cells that hold something.</param>
internal sealed record MaterialContent(string Kind, string Name, IReadOnlyDictionary<string, string> Cells);
