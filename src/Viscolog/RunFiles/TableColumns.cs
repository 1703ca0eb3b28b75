using System.Collections.Immutable;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Which column of one file stands where.</summary>
internal sealed class TableColumns
{
    private readonly Dictionary<string, int> _known = new(StringComparer.OrdinalIgnoreCase);

    private TableColumns(IReadOnlyList<string> names) => Names = names;

    /// <summary>The names as they stand in the header row.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>The places of the columns that the format does not know.</summary>
    public ImmutableArray<int> Unknown { get; private set; } = [];

    /// <summary>The names of the columns that the format does not know.</summary>
    public ImmutableArray<string> UnknownNames => [.. Unknown.Select(i => Names[i])];

    /// <summary>The columns of a header row; what is wrong with them goes to the findings.</summary>
    public static TableColumns Of(IReadOnlyList<string> names, int line, Findings findings)
    {
        var columns = new TableColumns(names);
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var unknown = ImmutableArray.CreateBuilder<int>();
        for (var i = 0; i < names.Count; i++)
        {
            CheckName(names[i], i, line, seen, findings);
            if (Columns.ByName.TryGetValue(names[i], out var column))
            {
                columns._known.TryAdd(column.Name, i);
            }
            else
            {
                unknown.Add(i);
            }
        }

        columns.Unknown = unknown.ToImmutable();
        columns.CheckUnknown(line, findings);
        return columns;
    }

    /// <summary>The place of a column; -1 where the file lacks it.</summary>
    public int PlaceOf(Column column) => _known.GetValueOrDefault(column.Name, -1);

    private static void CheckName(string name, int place, int line, HashSet<string> seen, Findings findings)
    {
        if (name.Length == 0)
        {
            findings.Refuse(new(line, FormattableString.Invariant($"{place + 1}"), "nothing"), "a column name; delete the column where it is empty");
        }
        else if (!seen.Add(name))
        {
            findings.Refuse(new(line, name, OneLine.Quoted(name)), "each column once");
        }
    }

    private void CheckUnknown(int line, Findings findings)
    {
        if (_known.Count == 0)
        {
            var row = OneLine.Quoted(string.Join(',', Names));
            findings.Refuse(new(line, null, row), $"the header row, with column names such as {RunFileLayout.NamesExample}");
        }

        foreach (var name in UnknownNames)
        {
            if (UnitWords.Meant(name, Columns.ByName.Keys) is { Count: > 0 } meant)
            {
                findings.Refuse(new(line, name, OneLine.Quoted(name)), $"{string.Join(" or ", meant.Order(StringComparer.Ordinal))}: give it in that unit");
            }

            findings.Warn(line, $"column '{name}' is unknown; it is kept, not used");
        }
    }
}
