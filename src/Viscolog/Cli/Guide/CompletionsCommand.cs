using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;

namespace Viscolog.Cli.Guide;

/// <summary>Prints a script that makes a shell complete the program's commands and options.</summary>
internal sealed class CompletionsCommand : CalledCommand
{
    /// <summary>Its name: it looks at all the others.</summary>
    public const string OwnName = "completions";

    /// <summary>
    /// The shells, each with its script. The program itself is asked what can stand at a place, so they need no renewing.
    /// </summary>
    private static readonly Dictionary<string, string> Scripts = new(StringComparer.Ordinal)
    {
        ["bash"] = """
            # For bash: eval "$(viscolog completions bash)", or put this into a file of the folder of completions.
            _viscolog() {
                local IFS=$'\n'
                local place=$((COMP_POINT - ${#COMP_WORDS[0]} - 1))
                local words=$(viscolog "[suggest:$place]" "${COMP_LINE#* }" 2>/dev/null)
                COMPREPLY=($(compgen -W "$words" -- "${COMP_WORDS[COMP_CWORD]}"))
            }
            complete -o default -F _viscolog viscolog

            """,
        ["zsh"] = """
            #compdef viscolog
            # For zsh: eval "$(viscolog completions zsh)" after compinit.
            _viscolog() {
                local -a words_there
                words_there=("${(@f)$(viscolog "[suggest:$((CURSOR - ${#words[1]} - 1))]" "${BUFFER#* }" 2>/dev/null)}")
                compadd -a words_there
                _files
            }
            compdef _viscolog viscolog

            """,
        ["fish"] = """
            # For fish: viscolog completions fish > ~/.config/fish/completions/viscolog.fish
            function __viscolog_words
                set -l line (string replace -r '^\S+\s?' '' -- (commandline -cp))
                viscolog "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null
            end
            complete -c viscolog -a '(__viscolog_words)'

            """,
        ["pwsh"] = """
            # For PowerShell: viscolog completions pwsh | Out-String | Invoke-Expression
            Register-ArgumentCompleter -Native -CommandName viscolog -ScriptBlock {
                param($wordToComplete, $commandAst, $cursorPosition)
                $line = ($commandAst.ToString().PadRight($cursorPosition)) -replace '^\S+\s?', ''
                $start = $commandAst.ToString().PadRight($cursorPosition).Length - $line.Length
                viscolog "[suggest:$($cursorPosition - $start)]" $line 2>$null |
                    Where-Object { $_ -like "$wordToComplete*" } |
                    ForEach-Object { [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_) }
            }

            """,
    };

    private readonly Argument<string> _shell = new("SHELL") { Description = "bash, zsh, fish or pwsh." };

    public CompletionsCommand()
        : base(
            OwnName,
            "Print a script that makes a shell complete commands and options.",
            "dotnet run --project src/Viscolog -- completions bash")
    {
        _shell.AcceptOnlyFromAmong([.. Scripts.Keys]);
        Take(_shell);
    }

    protected override ExitCode Run(Invocation call)
    {
        var script = Scripts[call.Value(_shell)].ReplaceLineEndings("\n");
        if (call.Json)
        {
            call.Print(new TextAnswer(script));
        }
        else
        {
            call.Terminal.Text(script);
        }

        return ExitCode.Done;
    }
}
