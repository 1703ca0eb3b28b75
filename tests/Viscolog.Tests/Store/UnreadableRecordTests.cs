using System.Text.RegularExpressions;
using Viscolog.Store.Journal;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Store;

/// <summary>Records whose checksum holds, but which say what can't be: the line is named, nothing is changed, exit code 4.</summary>
public sealed class UnreadableRecordTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("\"method: direct\"", "\"method: by-eye\"", "run")]
    [InlineData("\"base_g: 120\"", "\"base_g: -120\"", "run")]
    [InlineData("\"base_g: 120\"", "\"base_g 120\"", "run")]
    [InlineData("\"base_g: 120\"", "\"note: no base\"", "run")]
    [InlineData("\"added_g\":0.9", "\"added_g\":-0.9", "row")]
    [InlineData("\"added_g\":0.9", "\"added_g\":1e999", "row")]
    [InlineData("\"viscosity_mpas\":640", "\"viscosity_mpas\":-640", "row")]
    [InlineData("\"viscosity_mpas\":640", "\"viscosity_mpas\":\"thick\"", "row")]
    [InlineData("\"wait_s\":60", "\"wait_s\":-60", "row")]
    [InlineData("\"time\":\"[^\"]*\"", "\"time\":\"2026-02-30T09:15:00+01:00\"", "row")]
    [InlineData("\"viscosity_mpas\":640", "\"ku\":64", "row")]
    [InlineData("\"time\":\"[^\"]*\"", "\"time\":\"soon\"", "row")]
    [InlineData("\"thickener\":\"TA\"", "\"thickener\":\"TB\"", "row")]
    [InlineData("\"id\":\"[^\"]*\"", "\"id\":\"none\"", "run")]
    [InlineData("\"at\":\"[^\"]*\"", "\"at\":\"yesterday\"", "batch")]
    [InlineData("\"at\":\"[^\"]*\"", "\"at\":\"99999-01-01T00:00:00Z\"", "batch")]
    [InlineData("\"certified_mpas\":\"1012\"", "\"certified_mpas\":\"-1012\"", "oil")]
    [InlineData("\"method\":\"direct\"", "\"method\":\"by-eye\"", "oil")]
    [InlineData("\"target_mpas\":\"9000\"", "\"target_mpas\":\"-9000\"", "material")]
    [InlineData("\"kind\":\"base\"", "\"kind\":\"bucket\"", "material")]
    [InlineData("\"kind\":\"base\",\"name\":\"[^\"]*\"", "\"kind\":\"base\",\"name\":\"\\u0000\"", "material")]
    [InlineData("\"kind\":\"base\",\"name\":\"[^\"]*\"", "\"kind\":\"base\",\"name\":\"\"", "material")]
    [InlineData("\"kind\":\"row\"", "\"kind\":\"poem\"", "row")]
    [InlineData("\"base_g: 120\"", "null", "run")]
    [InlineData("\"certified_mpas\":\"1012\"", "\"certified_mpas\":null", "oil")]
    public void It_is_named(string find, string put, string kind)
    {
        var log = _folder.Of("log");
        var imported = Called.In(log, "import", Write("run.csv", RunText), Write("materials.csv", Materials), Write("oils.csv", Oils));
        Assert.True(imported.Code == 0, imported.Error);
        var place = new LogPlace(log);
        var named = 0;
        ForgedJournal.Change(place.Journal, (line, json) =>
        {
            if (
                named == 0
                    && json.StartsWith($"{{\"kind\":\"{kind}\"", StringComparison.Ordinal)
                    && Regex.IsMatch(json, find, RegexOptions.None, TimeSpan.FromSeconds(1)))
            {
                named = line;
                return Regex.Replace(json, find, put, RegexOptions.None, TimeSpan.FromSeconds(1));
            }

            return json;
        });
        Assert.True(named > 0, "nothing was changed");
        File.Delete(place.Seal);
        var before = File.ReadAllBytes(place.Journal);
        string[][] calls = [["runs"], ["show", "1"], ["verify"], ["export", "--oils"], ["import", Checkout.Sample("lantern-gel-06.csv")]];
        foreach (var call in calls)
        {
            var called = Called.In(log, call);
            Assert.True(called.Code == 4, $"{string.Join(' ', call)}: {called.Code} {called.Output} {called.Error}");
            Assert.Matches($"line {named} ", called.Error);
        }

        Assert.Equal(before, File.ReadAllBytes(place.Journal));
    }

    private const string RunText = """
        # name: pot
        # base_g: 120
        # method: direct
        # thickener: TA
        time,thickener,added_g,wait_s,viscosity_mpas
        2026-03-02T09:15:00+01:00,,,60,640
        ,TA,0.9,60,1180

        """;

    private const string Materials = """
        # viscolog-materials: 1
        kind,name,target_mpas
        base,B,
        specification,S,9000

        """;

    private const string Oils = """
        # viscolog-oils: 1
        date,method,oil,certified_mpas,certified_temp_c,viscosity_mpas,temp_c
        2026-09-07,direct,Nacre,1012,25,1019,25.1

        """;

    private string Write(string name, string text)
    {
        var path = _folder.Of(name);
        File.WriteAllText(path, text);
        return path;
    }
}
