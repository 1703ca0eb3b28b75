using System.Globalization;

namespace Viscolog.Core.Tests.Support;

/// <summary>Reads a published table from the test project's data: comment lines begin with #, then a header, then numbers.</summary>
public static class Table
{
    /// <summary>The rows of the table, numbers in the order of its columns.</summary>
    public static IReadOnlyList<double[]> Read(string file) =>
    [
        .. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", file))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Skip(1)
            .Select(line => line.Split(',').Select(word => double.Parse(word, NumberStyles.Float, CultureInfo.InvariantCulture)).ToArray()),
    ];
}
