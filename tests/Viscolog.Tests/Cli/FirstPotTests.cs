using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The pot that the page for beginners goes through gets the advice that the page says.</summary>
public sealed partial class FirstPotTests : IDisposable
{
    private const string Header = "# base: Ledge\n# base_g: 200\n# thickener: Sail; range_pct=1-5\n# target_mpas: 9000\n"
        + "# tolerance_pct: 15\nadded_g,wait_s,viscosity_mpas\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Every_row_of_the_page_is_answered_as_it_says()
    {
        var rows = Row().Matches(Pages.Text("docs/first-pot.md"));
        Assert.True(rows.Count > 5);
        var (file, run) = (_folder.Of("first-pot.csv"), Header);
        Assert.All(rows, row =>
        {
            run += string.Join(',', row.Groups["added"].Value.TrimStart('–'), row.Groups["wait"].Value, row.Groups["body"].Value) + "\n";
            File.WriteAllText(file, run);
            Assert.Equal(row.Groups["says"].Value, Advice(file));
        });
    }

    private static string Advice(string file)
    {
        var answer = JsonDocument.Parse(Called.With("advise", file, "--json").Output).RootElement;
        return answer.GetProperty("action").GetString() switch
        {
            "add" => $"ADD {answer.GetProperty("add_g").GetDouble().ToString("0.00", CultureInfo.InvariantCulture)} g",
            "measure" => "READ",
            var other => other!.ToUpperInvariant(),
        };
    }

    [GeneratedRegex(
        @"^\| (?<added>–|[0-9.]+) \| (?<wait>\d+) \| (?<body>\d+) \| (?<says>[^|]+) \|$",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline,
        1000)]
    private static partial Regex Row();
}
