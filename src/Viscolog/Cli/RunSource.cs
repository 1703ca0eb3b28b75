using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;

namespace Viscolog.Cli;

/// <summary>Reads the runs that a command names.</summary>
internal static class RunSource
{
    /// <summary>One run file; null after its refusal was reported.</summary>
    public static RunFile? Read(string path, Invocation call)
    {
        switch (RunFileReader.Read(path))
        {
            case RunFileOutcome.Read read:
                return read.File;
            case RunFileOutcome.Refused refused:
                call.Terminal.Error(refused.Refusal.Text);
                return null;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    /// <summary>Earlier runs from files and folders, the run at hand left out; null after a refusal was reported.</summary>
    public static ImmutableArray<Run>? ReadHistory(IEnumerable<string> paths, string runPath, Invocation call)
    {
        var runs = ImmutableArray.CreateBuilder<Run>();
        foreach (var path in paths)
        {
            if (!Directory.Exists(path))
            {
                if (Read(path, call) is not { } file)
                {
                    return null;
                }

                runs.Add(file.Run);
                continue;
            }

            foreach (var inside in Directory.EnumerateFiles(path, "*.csv").Order(StringComparer.Ordinal).Where(p => !IsSame(p, runPath)))
            {
                if (RunFileReader.Read(inside) is RunFileOutcome.Read read)
                {
                    runs.Add(read.File.Run);
                }
                else
                {
                    call.Warn([$"{inside}: not a run file that can be read, left aside"]);
                }
            }
        }

        return runs.ToImmutable();
    }

    private static bool IsSame(string left, string right) => string.Equals(Path.GetFullPath(left), Path.GetFullPath(right), StringComparison.Ordinal);
}
