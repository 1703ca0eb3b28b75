using System.CommandLine;

namespace Viscolog.Cli;

/// <summary>One call of a command: what was asked and where to answer.</summary>
internal sealed class Invocation(ParseResult parsed, CommonOptions common, Terminal terminal)
{
    public Terminal Terminal { get; } = terminal.With(parsed.GetValue(common.Ascii), parsed.GetValue(common.NoColor));

    public bool Json { get; } = parsed.GetValue(common.Json);

    public T? Value<T>(Option<T> option) => parsed.GetValue(option);

    public T Value<T>(Argument<T> argument) => parsed.GetRequiredValue(argument);

    public void Warn(IEnumerable<string> warnings)
    {
        if (parsed.GetValue(common.Quiet))
        {
            return;
        }

        foreach (var warning in warnings)
        {
            Terminal.Error("warning: " + warning);
        }
    }

    public ExitCode Refuse(string reason)
    {
        Terminal.Error(reason);
        return ExitCode.InputRefused;
    }

    public void Print(object answer) => Terminal.Line(System.Text.Json.JsonSerializer.Serialize(answer, answer.GetType(), Cli.Json.AnswerContext.Relaxed));
}
