using System.CommandLine;
using System.Reflection;
using Viscolog.Cli.Calls;
using Viscolog.Sharing;

namespace Viscolog.Cli.Share;

/// <summary>
/// Prints the SQL that makes a database one that benches can share, or the role of a bench in it. It changes nothing itself.
/// </summary>
internal sealed class ShareSetupCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- share setup";

    private readonly Option<string?> _bench = TextOption.Create(
        "--bench", "NAME", "Print what makes the role of this bench, to be run once for each; without it, what makes the database.");

    public ShareSetupCommand()
        : base("setup", "Print the SQL that the owner of the shared database runs; nothing is connected to.", Example)
        => Take(_bench);

    protected override ExitCode Run(Invocation call)
    {
        if (call.Value(_bench) is not { } bench)
        {
            using var schema = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream("sharing/schema.sql")!);
            while (schema.ReadLine() is { } line)
            {
                call.Terminal.Line(line);
            }

            return ExitCode.Done;
        }

        if (!ShareLink.CanName(bench))
        {
            return call.Wrong("--bench: a name of 1 to 60 characters");
        }

        var role = "\"viscolog_" + bench.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
        call.Terminal.Line($"create role {role} login in role viscolog_bench;");
        call.Terminal.Line("-- psql asks for its password and sends it encrypted:");
        call.Terminal.Line($"\\password {role}");
        return ExitCode.Done;
    }
}
