using System.CommandLine;

namespace Viscolog.Cli.Calls;

/// <summary>A command: what it takes, what it does, and an example for its help that works in a fresh checkout.</summary>
internal abstract class CalledCommand(string name, string description, string example) : Command(name, description)
{
    public string ExampleOfUse => example;

    /// <summary>Gives the command and its forms the options of every command, and somewhere to answer.</summary>
    public void Connect(CommonOptions common, CallOutput terminal)
    {
        foreach (var form in Subcommands.OfType<CalledCommand>())
        {
            form.Connect(common, terminal);
        }

        Take(common.All);
        SetAction(parsed => (int)Answer(new(parsed, common, terminal)));
    }

    private ExitCode Answer(Invocation call)
    {
        Speak(call.Language);
        return Run(call);
    }

    protected abstract ExitCode Run(Invocation call);

    /// <summary>States arguments and options in the order of the help.</summary>
    protected void Take(params ReadOnlySpan<Symbol> taken)
    {
        foreach (var one in taken)
        {
            if (one is Option option)
            {
                Add(option);
            }
            else
            {
                Add((Argument)one);
            }
        }
    }
}
