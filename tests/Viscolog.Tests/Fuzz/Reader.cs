using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Viscolog.FlowFiles;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.PracticeFiles;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Tables;
using Viscolog.Text;
using Viscolog.TrendFiles;
using Viscolog.Typing;

namespace Viscolog.Tests.Fuzz;

/// <summary>
/// A reader of something from outside, and what must hold of it whatever it is given: it answers or refuses in one line, and what it took
/// says the same when it is written and read again.
/// </summary>
/// <param name="Name">What it reads.</param>
/// <param name="Read">Reads; throws where something does not hold. Says whether the input was taken.</param>
/// <param name="Seeds">Inputs to begin with.</param>
internal sealed record Reader(string Name, Func<byte[], bool> Read, ImmutableArray<string> Seeds)
{
    private const string File = "f.csv";

    private static readonly Lazy<string> Passing = new(NewPlace);

    /// <summary>Whether one input takes ten times as long as those of others: long rounds give it a tenth as many.</summary>
    public bool IsSlow { get; init; }

    /// <summary>Every reader there is.</summary>
    public static ImmutableArray<Reader> All { get; } =
    [
        new("run file", ReadRun, [Seed.Run, Seed.Pair, Seed.Decimal]),
        new("sheet of a workbook", ReadSheet, [Seed.Sheet]) { IsSlow = true },
        new("materials file", ReadMaterials, [Seed.Materials]),
        new("oils file", ReadOils, [Seed.Oils]),
        new("flow file", bytes => Table(FlowFileReader.Parse(File, bytes)) is not null, [Seed.Flow, Seed.Speeds]),
        new("trend file", bytes => Table(TrendFileReader.Parse(File, bytes, null)) is not null, [Seed.Trend]),
        new("record of the journal", ReadRecord, [.. Seed.Records]),
        new("journal", ReadJournal, [Seed.Journal]) { IsSlow = true },
        new("seal and query copy", ReadSeal, [Seed.Seal]) { IsSlow = true },
        new("practice game", ReadGame, [Seed.Game]),
        new("what is typed", ReadTyped, [.. Seed.Typed]),
    ];

    private static bool ReadRun(byte[] bytes)
        => Table(RunFileReader.Parse(File, bytes)) is { } file
            && Same(file, RunFileWriter.Write, again => Table(RunFileReader.Parse(File, again)));

    private static bool ReadSheet(byte[] bytes)
        => Table(RunFileReader.Parse(File, SheetZip.Of(Encoding.UTF8.GetString(bytes)))) is { } file
            && Same(file, WriteSheet, again => Table(RunFileReader.Parse(File, again)));

    private static void WriteSheet(RunFile file, Stream stream, bool spreadsheetSafe)
    {
        using var csv = new MemoryStream();
        RunFileWriter.Write(file, csv, spreadsheetSafe);
        stream.Write(csv.ToArray());
        var again = Table(RunFileReader.Parse(File, TableSheet.Workbook([TableSheet.Of("run", csv.ToArray(), RunSheet.IsText)]).Made!));
        Holds(again is not null && Written(again, RunFileWriter.Write).AsSpan().SequenceEqual(csv.ToArray()), "another run as a workbook");
    }

    private static bool ReadMaterials(byte[] bytes)
        => Table(MaterialFileReader.Parse(File, bytes)) is { } file
            && Same(
                file, (f, stream, _) => MaterialFileWriter.Write(f.Rows, stream), again => Table(MaterialFileReader.Parse(File, again)));

    private static bool ReadOils(byte[] bytes)
        => Table(OilFileReader.Parse(File, bytes)) is { } file
            && Same(file, (f, stream, _) => OilFileWriter.Write(f.Rows, stream), again => Table(OilFileReader.Parse(File, again)));

    private static bool ReadRecord(byte[] bytes)
    {
        try
        {
            // What was read is written and read again as it is.
            var (first, second) = (RecordJson.Read(bytes, 1), "");
            for (var i = 0; i < 2; i++)
            {
                var buffer = new System.Buffers.ArrayBufferWriter<byte>();
                using var json = RecordJson.Writer(buffer);
                RecordJson.Write(json, first);
                json.Flush();
                var text = Encoding.UTF8.GetString(buffer.WrittenSpan);
                Holds(i == 0 || text == second, "another record when it is read again");
                (first, second) = (RecordJson.Read(buffer.WrittenSpan, 1), text);
            }

            return first is not LogRecord.RunStated stated || TryHeader(stated.Header);
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    private static bool TryHeader(string[] lines)
    {
        try
        {
            return HeaderText.TryRead(lines).File is not null;
        }
        catch (FormatException)
        {
            return false;
        }
    }

    private static bool ReadJournal(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        var scan = JournalScanner.Scan(stream, 0, null);
        Holds(scan.Length <= bytes.Length && scan.Lines >= 0, "more than there is");
        try
        {
            stream.Position = 0;
            return JournalScanner.Records(stream, scan.Length).Count() == scan.Lines && scan.Fault is null;
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    private static bool ReadSeal(byte[] bytes)
    {
        System.IO.File.WriteAllBytes(Passing.Value, bytes);
        CopyFile.StateOf(Passing.Value);
        return Seal.Read(Passing.Value) is not null;
    }

    private static bool ReadGame(byte[] bytes)
    {
        try
        {
            if (JsonSerializer.Deserialize(bytes, PracticeJson.Relaxed.PracticeResult)
                is not { Schema: PracticeResult.Version, IsFinite: true } game)
            {
                return false;
            }

            var text = JsonSerializer.SerializeToUtf8Bytes(game, PracticeJson.Relaxed.PracticeResult);
            var again = JsonSerializer.Deserialize(text, PracticeJson.Relaxed.PracticeResult);
            Holds(
                text.AsSpan().SequenceEqual(JsonSerializer.SerializeToUtf8Bytes(again, PracticeJson.Relaxed.PracticeResult)),
                "another game when it is read again");
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static bool ReadTyped(byte[] bytes)
    {
        var text = Encoding.UTF8.GetString(bytes);
        var move = PracticeMoveText.Read(text, out var error);
        Holds(move is not null || OnOneLine(error!), "a refusal on several lines");
        Holds(TerminalText.Of(text).EnumerateRunes().All(PlainText.Shows), "something a terminal must not have");
        return (move is not null) | (TypedSize.Read(text, out _) is not null) | (
            TypedNumber.Read(text, NumberRange.Viscosity, out _) is not null) | FileTime.TryParse(text, out _)
            | TryHeader(text.Split('\n'));
    }

    /// <summary>What was read; null where it was refused, which takes one line that names the file.</summary>
    private static T? Table<T>(TableOutcome<T> outcome)
        where T : class
    {
        if (outcome is TableOutcome<T>.Read { File: var file })
        {
            return file;
        }

        var text = ((TableOutcome<T>.Refused)outcome).Refusal.Text;
        Holds(text.StartsWith(File, StringComparison.Ordinal) && OnOneLine(text), "a refusal that is not one line about the file: " + text);
        return null;
    }

    private static bool Same<T>(T file, Action<T, Stream, bool> write, Func<byte[], T?> read)
        where T : class
    {
        var first = Written(file, write);
        var again = read(first);
        Holds(again is not null, "refused when it is read again: " + Encoding.UTF8.GetString(first));
        Holds(
            first.AsSpan().SequenceEqual(Written(again!, write)), "another text when it is read again: " + Encoding.UTF8.GetString(first));
        return true;
    }

    private static byte[] Written<T>(T file, Action<T, Stream, bool> write)
    {
        using var stream = new MemoryStream();
        write(file, stream, false);
        return stream.ToArray();
    }

    private static string NewPlace()
    {
        var folder = Directory.CreateTempSubdirectory("viscolog-fuzz-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        return Path.Combine(folder, "seal");
    }

    private static bool OnOneLine(string text)
        => text.EnumerateRunes().All(r => PlainText.Shows(r) || r == Rune.ReplacementChar) && text.Length < 5000;

    private static void Holds(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidOperationException(otherwise);
        }
    }
}
