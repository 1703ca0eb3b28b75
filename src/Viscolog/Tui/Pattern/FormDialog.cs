using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>Shows a form; Enter reads it, and stays with what is wrong beside it.</summary>
internal sealed class FormDialog<T> : Dialog<T?>
    where T : class
{
    private readonly Form<T> _form;
    private readonly TextField[] _fields;
    private readonly Label _error;

    public FormDialog(Form<T> form, TuiContext context)
    {
        _form = form;
        Title = Shown(form.Title);
        Width = 70;
        SetScheme(context.Shades.Scheme);
        var about = form.About.Length == 0 ? [] : Paragraph.Of(form.About, 64).ToList();
        var row = 0;
        foreach (var line in about)
        {
            Add(new Label { X = 1, Y = row++, Text = Shown(line) });
        }

        row += about.Count > 0 ? 1 : 0;
        var wide = form.Fields.Max(f => f.Label.Length);
        _fields = [.. form.Fields.Select((f, i) => new TextField { X = wide + 3, Y = row + i, Width = 22, Text = f.Text })];
        for (var i = 0; i < _fields.Length; i++)
        {
            // No letter of a label is a key: columns have underscores in their names.
            Add(new Label { X = 1, Y = row + i, Text = Shown(form.Fields[i].Label), HotKeySpecifier = new(0xFFFF) });
            Add(_fields[i]);
            Add(new Label { X = wide + 26, Y = row + i, Width = Dim.Fill(), Text = Shown(form.Fields[i].Hint) });
        }

        _error = new Label { X = 1, Y = row + _fields.Length, Width = Dim.Fill(), Height = 2, Text = " " };
        _error.SetScheme(new(context.Shades.Of(Tone.Bad)));
        Add(_error);
        AddButton(new Button { Text = "_Cancel" });
        AddButton(new Button { Text = "_OK", IsDefault = true });

        string Shown(string text) => context.IsAscii ? AsciiText.Of(TerminalText.Of(text)) : TerminalText.Of(text);
    }

    protected override bool OnAccepting(CommandEventArgs args)
    {
        if (args.Context?.TryGetSource(out var source) == true && source is Button { IsDefault: false })
        {
            Result = null;
            RequestStop();
            return true;
        }

        var answer = _form.Read([.. _fields.Select(f => f.Text)]);
        if (answer.Value is { } value)
        {
            Result = value;
            RequestStop();
            return true;
        }

        _error.Text = "! " + TerminalText.Of(answer.Error ?? "");
        _fields[answer.Field].SetFocus();
        return true;
    }
}
