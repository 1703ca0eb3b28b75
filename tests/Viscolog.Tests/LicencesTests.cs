using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using Viscolog.Tests.Support;

namespace Viscolog.Tests;

/// <summary>The page of licences names every package of the lock files, at its version; VISCOLOG_ACCEPT=1 writes the tables anew.</summary>
public sealed class LicencesTests
{
    private const string Begin = "<!-- tables: made from the lock files; VISCOLOG_ACCEPT=1 writes them anew -->";

    private static readonly string[] Permissive = ["MIT", "BSD-2-Clause", "Apache-2.0", "MS-PL OR Apache-2.0", "PostgreSQL"];

    private sealed record Package(string Name, string Version, string Licence, string Holder);

    [Fact]
    public void The_page_has_every_package_of_the_lock_files()
    {
        var path = Path.Combine(Checkout.Root, "docs", "licences.md");
        var text = File.ReadAllText(path);
        var current = text[..text.IndexOf(Begin, StringComparison.Ordinal)] + Begin + "\n\n" + Tables();
        if (Environment.GetEnvironmentVariable("VISCOLOG_ACCEPT") == "1")
        {
            File.WriteAllText(path, current);
        }

        Assert.Equal(current, File.ReadAllText(path));
    }

    [Fact]
    public void Every_licence_is_one_that_was_looked_at()
        => Assert.All(Locked("src").Concat(Locked("tests")), p => Assert.Contains(p.Licence, Permissive, StringComparer.Ordinal));

    private static string Tables()
    {
        var built = Locked("src");
        var tools = built.Where(p => !IsShipped(p)).Concat(Locked("tests").Except(built));
        var tables = new StringBuilder();
        Table(tables, "Delivered with the program", built.Where(IsShipped));
        tables.Append('\n');
        Table(tables, "Used to build and test it, not delivered", tools.OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase));
        return tables.ToString();
    }

    private static void Table(StringBuilder to, string title, IEnumerable<Package> packages)
    {
        to.Append("## ").Append(title).Append("\n\n| package | version | licence | holder, as the package states it |\n");
        to.Append("|---|---|---|---|\n");
        foreach (var package in packages)
        {
            to.Append("| ").AppendJoin(" | ", package.Name, package.Version, package.Licence, package.Holder).Append(" |\n");
        }
    }

    /// <summary>Analyzers look at the source and leave nothing in the program.</summary>
    private static bool IsShipped(Package package) => !package.Name.Contains("Analyzer", StringComparison.Ordinal);

    private static IReadOnlyList<Package> Locked(string folder)
        => [.. Directory.GetFiles(Path.Combine(Checkout.Root, folder), "packages.lock.json", SearchOption.AllDirectories)
            .SelectMany(f => JsonDocument.Parse(File.ReadAllText(f)).RootElement.GetProperty("dependencies").EnumerateObject())
            .SelectMany(platform => platform.Value.EnumerateObject())
            .Where(p => p.Value.GetProperty("type").GetString() != "Project")
            .Select(p => (p.Name, Version: p.Value.GetProperty("resolved").GetString()!)).Distinct()
            .OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase).Select(p => Stated(p.Name, p.Version))];

    private static Package Stated(string name, string version)
    {
        var ignoringCase = new EnumerationOptions { MatchCasing = MatchCasing.CaseInsensitive };
        var file = PackageFolders().SelectMany(f => Directory.GetDirectories(f, name, ignoringCase))
            .SelectMany(f => Directory.GetFiles(Path.Combine(f, version), "*.nuspec")).First();
        var metadata = XDocument.Load(file).Root!.Elements().Single(e => e.Name.LocalName == "metadata").Elements()
            .ToLookup(e => e.Name.LocalName, e => e.Value.Trim(), StringComparer.Ordinal);
        var copyright = metadata["copyright"].FirstOrDefault(c => c.StartsWith('©') || c.StartsWith("Copyright", StringComparison.Ordinal));
        return new(name, version, metadata["license"].Single(), copyright ?? metadata["authors"].Single());
    }

    /// <summary>Where restore has put the packages of these tests.</summary>
    private static IEnumerable<string> PackageFolders()
    {
        var assets = Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "obj", "project.assets.json");
        return JsonDocument.Parse(File.ReadAllText(assets)).RootElement.GetProperty("packageFolders").EnumerateObject().Select(f => f.Name);
    }
}
