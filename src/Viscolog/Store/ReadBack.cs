using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>Makes sure that a run which is logged can be exported and read again.</summary>
internal static class ReadBack
{
    /// <summary>Why a run with these rows could not be read back from its file; null where it can.</summary>
    public static string? Fault(RunFile header, IEnumerable<FileRow> rows)
    {
        using var stream = new MemoryStream();
        RunFileWriter.Write(header.With(rows), stream);
        return RunFileReader.Parse("run", stream.ToArray()) is RunFileOutcome.Refused { Refusal: var refusal }
            ? $"{(refusal.Column is { } column ? column + ": " : "")}read {refusal.Read}, expected {refusal.Expected}"
            : null;
    }
}
