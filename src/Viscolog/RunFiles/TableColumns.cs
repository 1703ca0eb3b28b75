using System.Collections.Immutable;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Which column of one file stands where.</summary>
internal sealed class TableColumns
{
    private TableColumns(IReadOnlyList<string> names) => Names = names;

    /// <summary>The names as they stand in the header row.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>The columns that the format knows, in the order of its table, each with its place.</summary>
    public ImmutableArray<(Column Column, int Place)> Known { get; private set; } = [];

    /// <summary>The places of the columns that the format does not know.</summary>
    public ImmutableArray<int> Unknown { get; private set; } = [];

    /// <summary>The names of the columns that the format does not know.</summary>
    public ImmutableArray<string> UnknownNames => [.. Unknown.Select(i => Names[i])];

    /// <summary>The columns of a header row; what is wrong with them goes to the findings.</summary>
    public static TableColumns Of(IReadOnlyList<string> names, int line, Findings findings)
    {
        var columns = new TableColumns(names);
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var known = new Dictionary<Column, int>();
        var unknown = ImmutableArray.CreateBuilder<int>();
        for (var i = 0; i < names.Count; i++)
        {
            CheckName(names[i], i, line, seen, findings);
            if (Columns.ByName.TryGetValue(names[i], out var column))
            {
                known.TryAdd(column, i);
            }
            else
            {
                unknown.Add(i);
            }
        }

        columns.Known = [.. Columns.All.Where(known.ContainsKey).Select(c => (c, known[c]))];
        columns.Unknown = unknown.ToImmutable();
        columns.CheckUnknown(line, findings);
        return columns;
    }

    private static void CheckName(string name, int place, int line, HashSet<string> seen, Findings findings)
    {
        if (name.Length == 0)
        {
            findings.Refuse(new(line, FormattableString.Invariant($"{place + 1}"), "nothing"), "a column name; delete the column if it "
                + "is empty");
        }
        else if (!seen.Add(name))
        {
            findings.Refuse(new(line, name, OneLine.Quoted(name)), "each column once");
        }
    }

    private void CheckUnknown(int line, Findings findings)
    {
        if (Known.IsEmpty)
        {
            var row = OneLine.Quoted(string.Join(',', Names));
            findings.Refuse(new(line, null, row), $"the header row, with column names such as {RunFileReader.NamesExample}");
        }

        foreach (var name in UnknownNames)
        {
            UnitWords.Refuse(name, Columns.ByName.Keys, new(line, name, OneLine.Quoted(name)), findings);
            findings.Warn(line, $"column '{name}' is unknown; it is kept, not used");
        }
    }
}
