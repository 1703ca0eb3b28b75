using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>A table on the terminal, its names set apart.</summary>
internal sealed class TextTable(params string[] names)
{
    private readonly PlainTable table = new(names);

    public void Add(params string[] cells) => table.Add(cells);

    public void Write(CallOutput terminal)
    {
        var isFirst = true;
        foreach (var line in table.Lines())
        {
            if (isFirst)
            {
                terminal.Emphasized(line);
            }
            else
            {
                terminal.Line(line);
            }

            isFirst = false;
        }
    }
}
