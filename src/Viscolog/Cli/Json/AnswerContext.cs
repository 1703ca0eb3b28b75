using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>How answers become JSON: names in snake case, absent fields left out.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true)]
[JsonSerializable(typeof(ErrorAnswer))]
[JsonSerializable(typeof(TextAnswer))]
[JsonSerializable(typeof(LoggedAnswer))]
[JsonSerializable(typeof(NamesAnswer))]
[JsonSerializable(typeof(ConfigAnswer))]
[JsonSerializable(typeof(AdviceAnswer))]
[JsonSerializable(typeof(FitAnswer))]
[JsonSerializable(typeof(PlotAnswer))]
[JsonSerializable(typeof(ConvertAnswer))]
[JsonSerializable(typeof(UnitAnswer))]
[JsonSerializable(typeof(FlowAnswer))]
[JsonSerializable(typeof(CheckAnswer))]
[JsonSerializable(typeof(TrendAnswer))]
[JsonSerializable(typeof(DriftsAnswer))]
[JsonSerializable(typeof(ImportAnswer))]
[JsonSerializable(typeof(RunsAnswer))]
[JsonSerializable(typeof(CompareAnswer))]
[JsonSerializable(typeof(RunAnswer))]
[JsonSerializable(typeof(ExportAnswer))]
[JsonSerializable(typeof(BackupAnswer))]
[JsonSerializable(typeof(RestoreAnswer))]
[JsonSerializable(typeof(VerifyAnswer))]
[JsonSerializable(typeof(SalvageAnswer))]
[JsonSerializable(typeof(PracticeAnswer))]
[JsonSerializable(typeof(PracticeScoresAnswer))]
[JsonSerializable(typeof(ReplayAnswer))]
[JsonSerializable(typeof(BatchAnswer))]
[JsonSerializable(typeof(PaperAnswer))]
[JsonSerializable(typeof(ListenAnswer))]
[JsonSerializable(typeof(ShareAnswer))]
[JsonSerializable(typeof(SharedRunsAnswer))]
internal sealed partial class AnswerContext : JsonSerializerContext
{
    /// <summary>The same on one line.</summary>
    public static AnswerContext OneLine => field ??= new(new JsonSerializerOptions(Relaxed.Options) { WriteIndented = false });

    /// <summary>With text as it is: the output is no web page.</summary>
    public static AnswerContext Relaxed
        => field ??= new(new JsonSerializerOptions(Default.Options!) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
}

/// <summary>An answer with a schema, which stands first.</summary>
internal abstract record Answer
{
    protected Answer(string schema) => Schema = schema;

    [JsonPropertyOrder(-1)]
    public string Schema { get; }
}
