using System.CommandLine;
using Viscolog.Store.Journal;

namespace Viscolog.Cli.Calls;

/// <summary>Options that every command has.</summary>
internal sealed class CommonOptions(Surroundings surroundings)
{
    public Surroundings Surroundings { get; } = surroundings;

    public Option<string> Log { get; } = new("--log")
    {
        HelpName = "PATH",
        Description = $"The log's folder; default: "
        + $"${LogPlace.Variable}, else the user's data folder."
    };

    public Option<bool> Json { get; } = new("--json") { Description = "Print one JSON object and nothing else." };

    public Option<bool> Quiet { get; } = new("--quiet") { Description = "No warnings on standard error." };

    public Option<bool> NoColor { get; } = new("--no-color", "--no-colour") { Description = "No emphasis; the same if NO_COLOR is set." };

    public Option<bool> Ascii { get; } = new("--ascii") { Description = "Plain ASCII; the default on a terminal without UTF-8." };

    public Option[] All => [Log, Json, Quiet, NoColor, Ascii];
}
