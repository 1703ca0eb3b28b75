using Terminal.Gui.App;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>
/// Shows a form; Enter reads it, and stays with what is wrong beside it. Where not all fields have room, those about the one that is typed
/// into are shown.
/// </summary>
internal sealed class FormDialog<T> : Dialog<T?>
    where T : class
{
    private const int Wide = 72;
    private const int ErrorRows = 2;

    /// <summary>Rows and columns of the frame, and rows that the toolkit takes for the buttons.</summary>
    private const int Borders = 2;
    private const int ButtonRows = 4;

    private readonly Form<T> _form;
    private readonly TuiContext _context;
    private readonly List<Label> _about = [];
    private readonly List<(Label Label, TextField Field, Label Hint)> _rows = [];
    private readonly Label _error;
    private IApplication? _pasteFrom;

    public FormDialog(Form<T> form, TuiContext context)
    {
        (_form, _context) = (form, context);
        Title = Shown(form.Title);
        Width = Dim.Func(_ => Columns);
        Height = Dim.Func(_ => Math.Min(Screen.Height, Borders + About().Count + form.Fields.Length + ErrorRows + ButtonRows + Gap));
        SetScheme(context.Shades.Scheme);
        foreach (var field in form.Fields)
        {
            // No letter of a label is a key: columns have underscores in their names.
            var text = new TextField { Text = TerminalText.Of(field.Text) };
            var row = (
                new Label { X = 1, Text = Shown(field.Label), HotKeySpecifier = new(0xFFFF) },
                text,
                new Label { Width = Dim.Fill(), Text = Shown(HintOf(field)), HotKeySpecifier = new(0xFFFF) });
            text.KeyDown += (_, key) => key.Handled = Take(key, field, text);
            text.HasFocusChanged += (_, _) => Place();
            _rows.Add(row);
            Add(row.Item1, row.text, row.Item3);
        }

        _error = new Label { X = 1, Width = Dim.Fill(), Height = ErrorRows, Text = " " };
        _error.SetScheme(new(context.Shades.Of(Tone.Bad)));
        Add(_error);
        AddButton(new Button { Text = Say("_Cancel") });
        AddButton(new Button { Text = Say("_OK"), IsDefault = true });
        SubViewsLaidOut += (_, _) => Place();
        Initialized += (_, _) =>
        {
            _pasteFrom = App;
            App!.Paste += Paste;
        };
        Initialized += (_, _) =>
        {
            // What is not shown can't be typed into.
            var first = _rows[Math.Max(0, form.Fields.ToList().FindIndex(f => f.IsFirst))].Field;
            first.Visible = true;
            first.SetFocus();
            Place();
        };
    }

    private System.Drawing.Rectangle Screen => App?.Screen ?? new(0, 0, Wide, 24);

    private int Columns => Math.Min(Wide, Screen.Width);

    private int Inside => Columns - Borders - 2;

    private int Gap => _form.About.Length > 0 ? 1 : 0;

    protected override void Dispose(bool disposing)
    {
        if (disposing && _pasteFrom is { } app)
        {
            app.Paste -= Paste;
        }

        base.Dispose(disposing);
    }

    protected override bool OnAccepting(CommandEventArgs args)
    {
        if (args.Context?.TryGetSource(out var source) == true && source is Button { IsDefault: false })
        {
            Result = null;
            RequestStop();
            return true;
        }

        var answer = _form.Read([.. _rows.Select((r, i) => Typed(_form.Fields[i], r.Field.Text))]);
        if (answer.Value is { } value)
        {
            Result = value;
            RequestStop();
            return true;
        }

        _error.Text = string.Join('\n', Paragraph.Of(Shown("! " + answer.Error), Inside).Take(ErrorRows));
        _rows[answer.Field].Field.SetFocus();
        return true;
    }

    private void Paste(object? sender, PasteEventArgs args)
    {
        if (App?.TopRunnableView == this)
        {
            args.Handled = true;
            if (_rows.Find(r => r.Field.HasFocus).Field is { } field)
            {
                PastedText.Into(field, args.Text);
            }
        }
    }

    /// <summary>What a field says: what it began with to the letter, where nothing of it was changed on the screen.</summary>
    private static string Typed(FormField field, string shown) => shown == TerminalText.Of(field.Text) ? field.Text : shown;

    private static string HintOf(FormField field) => field switch
    {
        { Choices.IsEmpty: true } or { Hint.Length: > 0 } => field.Hint,
        _ => Say("F4 lists"),
    };

    private List<string> About() => _form.About.Length == 0 ? [] : [.. Paragraph.Of(_form.About, Inside)];

    private bool Take(Key key, FormField field, TextField text)
    {
        var place = _rows.FindIndex(r => r.Field == text);
        if (key == Key.F4 && !field.Choices.IsEmpty)
        {
            Pick(field, text);
            return true;
        }

        var next = key == Key.Tab || key == Key.CursorDown ? place + 1 : key == Key.Tab.WithShift || key == Key.CursorUp ? place - 1 : -1;
        if (next < 0 || next >= _rows.Count)
        {
            return false;
        }

        _rows[next].Field.Visible = true;
        _rows[next].Field.SetFocus();
        return true;
    }

    private void Pick(FormField field, TextField text)
    {
        using var screen = PickScreen.On(_context, $"{_form.Title}: {field.Label}", field.Choices, text.Text);
        App!.Run(screen);
        if (screen.State.Picked is { } picked)
        {
            text.Text = picked;
        }

        text.SetFocus();
        SetNeedsDraw();
    }

    /// <summary>Lays out what has room; the field that is typed into always has.</summary>
    private void Place()
    {
        if (Viewport.IsEmpty)
        {
            return;
        }

        var about = About();
        var room = Viewport.Height - about.Count - Gap - ErrorRows;
        if (room < 1)
        {
            // What the form is about may be a caution: it gives way only where not one field would be left.
            about = [];
            room = Viewport.Height - ErrorRows;
        }

        var rows = Math.Clamp(room, 1, _rows.Count);

        ShowAbout(about);
        var top = about.Count > 0 ? about.Count + Gap : 0;
        var focused = Math.Max(0, _rows.FindIndex(r => r.Field.HasFocus));
        var first = Math.Clamp(focused - (rows / 2), 0, _rows.Count - rows);
        var label = _form.Fields.Max(f => f.Label.Length) + 2;
        // Hints are shown whole; the field takes what they leave.
        var hint = _rows.Max(r => PlainText.Columns(r.Hint.Text));
        var field = Math.Clamp(Viewport.Width - label - hint - 2, 12, 26);
        for (var i = 0; i < _rows.Count; i++)
        {
            var isShown = i >= first && i < first + rows;
            View[] views = [_rows[i].Label, _rows[i].Field, _rows[i].Hint];
            foreach (var view in views)
            {
                view.Visible = isShown;
                view.Y = top + i - first;
            }

            (_rows[i].Field.X, _rows[i].Field.Width, _rows[i].Hint.X) = (label, field, label + field + 1);
        }

        _error.Y = top + rows;
    }

    private void ShowAbout(List<string> lines)
    {
        while (_about.Count < lines.Count)
        {
            _about.Add(new Label { X = 1, Y = _about.Count, HotKeySpecifier = new(0xFFFF) });
            Add(_about[^1]);
        }

        for (var i = 0; i < _about.Count; i++)
        {
            _about[i].Visible = i < lines.Count;
            _about[i].Text = i < lines.Count ? Shown(lines[i]) : "";
        }
    }

    private string Shown(string text) => _context.IsAscii ? AsciiText.Of(TerminalText.Of(text)) : TerminalText.Of(text);
}
