using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.MaterialFiles;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;

namespace Viscolog.Tui.RunHeaders;

/// <summary>The form of what a run is about: to begin one, and to correct one that was begun.</summary>
internal sealed class RunForm
{
    private const string Name = "name", Base = "base", BaseGrams = "base in the pot", First = "thickener", FirstRange = "usual range";
    private const string Target = "target", Tolerance = "tolerance", TheMethod = "method", Operator = "operator";
    private const string Second = "second thickener", SecondRange = "its usual range", String = "string from-to", Product = "product";
    private const string Lot = "lot", FirstChemistry = "chemistry", SecondChemistry = "second's chemistry", Reference = "reads at";

    private static readonly NumberRange ToleranceRange = new("%", 0.001, 99);

    private readonly ImmutableArray<Material> _kept;
    private readonly RunFile? _run;
    private readonly Run? _known;
    private readonly ImmutableArray<FormField> _fields;

    private RunForm(IReadOnlyList<MaterialRow> materials, RunFile? run, Run? known)
    {
        _kept = [.. materials.Select(m => m.Material).Where(m => !m.IsRetired)];
        (_run, _known) = (run, known);
        _fields = [.. Fields()];
    }

    /// <summary>The form that begins a run, with what the last run used already in it.</summary>
    /// <param name="materials">The log's materials.</param>
    /// <param name="last">The run begun last; null for none.</param>
    public static Form<RunFile> New(IReadOnlyList<MaterialRow> materials, LoggedRun? last)
        => new RunForm(materials, null, last?.File.Run).Form(Say("New run"), Say("Only base, grams and thickener are required."));

    /// <summary>The form that corrects what a run says of itself; its entries stay.</summary>
    public static Form<RunFile> Of(IReadOnlyList<MaterialRow> materials, RunFile run)
        => new RunForm(materials, run.WithoutRows(), run.Run)
            .Form(Say("About this run"), Say("What is corrected here is logged; the entries stay as they are."));

    private Form<RunFile> Form(string title, string about)
        => new(title, about, [.. _fields.Select(f => f with { Label = Label(f.Label) })], Read);

    /// <summary>What stands before a field.</summary>
    private static string Label(string field) => field switch
    {
        Name => Say("name"),
        Base => Say("base"),
        BaseGrams => Say("base in the pot"),
        First => Say("thickener"),
        FirstRange => Say("usual range"),
        Target => Say("target"),
        Tolerance => Say("tolerance"),
        TheMethod => Say("method"),
        Operator => Say("operator"),
        Second => Say("second thickener"),
        SecondRange => Say("its usual range"),
        String => Say("string from-to"),
        Product => Say("product"),
        Lot => Say("lot"),
        FirstChemistry => Say("chemistry"),
        SecondChemistry => Say("second's chemistry"),
        Reference => Say("reads at"),
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "not a field"),
    };

    private IEnumerable<FormField> Fields()
    {
        var (bases, thickeners) = (Names<Material.OfBase>(), Names<Material.OfThickener>());
        var methods = Names<Material.OfMethod>().AddRange(Method.All.Select(m => m.Id));
        var (first, second) = (_known?.Thickeners.ElementAtOrDefault(0), _known?.Thickeners.ElementAtOrDefault(1));
        ImmutableArray<string> chemistries = [.. Enum.GetValues<ThickenerChemistry>().Select(Word)];
        yield return new(Name, _run?.Run.Name ?? "");
        yield return new(Base, _known?.Base.Name ?? bases.FirstOrDefault("")) { Choices = bases };
        yield return new(BaseGrams, _known is null ? "" : Typed(_known.BaseMass.Grams), "g");
        yield return new(First, first?.Name ?? thickeners.FirstOrDefault("")) { Choices = thickeners };
        yield return new(FirstRange, (first ?? Kept(thickeners.FirstOrDefault(""))) is { } t ? Range(t) : "1-5", Say("% of base"));
        // With a comma before three digits it would be taken for thousands.
        yield return new(
            Target, _known?.Target is { } target ? FileNumbers.Show(Math.Round(target.Band.Aim.MilliPascalSeconds, 3)) : "", TargetHint());
        yield return new(Tolerance, ToleranceOf(_known?.Target), Say("% either side"));
        yield return new(
            TheMethod,
            _known is null ? Names<Material.OfMethod>().FirstOrDefault(Method.Direct.Id) : MethodText(_known))
        {
            Choices = methods,
        };
        yield return new(Operator, _known?.Operator ?? "");
        yield return new(Second, second?.Name ?? "", Say("for string, if any")) { Choices = thickeners };
        yield return new(SecondRange, second is null ? "" : Range(second), Say("% of base"));
        yield return new(
            String,
            _known?.TargetString is { } s ? $"{Typed(s.Low.Millimeters)}-{Typed(s.High.Millimeters)}" : "",
            Say("mm, such as 30-45"));
        yield return new(Product, _known?.Product ?? "") { Choices = Names<Material.OfSpecification>() };
        yield return new(Lot, _run?.Run.Lot ?? "", Say("of the base"));
        yield return new(FirstChemistry, first is null ? "" : Word(first.Chemistry)) { Choices = chemistries };
        yield return new(SecondChemistry, second is null ? "" : Word(second.Chemistry)) { Choices = chemistries };
        yield return new(Reference, _known?.ReferenceTemperature is { } at ? Typed(at.Celsius) : "", Say("°C; 23 if empty"));
    }

    private string TargetHint()
        => _known?.MethodInForce is { } method && method.Unit != "mPa·s" ? Say($"mPa·s, or {method.Unit}") : "mPa·s";

    /// <summary>A number as a person types it.</summary>
    private static string Typed(double value) => value.ToString("R", Numbers);

    private static string Word(ThickenerChemistry chemistry) => chemistry switch
    {
        ThickenerChemistry.AlkaliSwellable => Say("alkali-swellable"),
        ThickenerChemistry.Associative => Say("associative"),
        ThickenerChemistry.Cellulosic => Say("cellulosic"),
        ThickenerChemistry.Clay => Say("clay"),
        ThickenerChemistry.Other => Say("other", "chemistry"),
        _ => throw new ArgumentOutOfRangeException(nameof(chemistry), chemistry, "not a chemistry"),
    };

    /// <summary>A chemistry's name in files, by its word or that name; what is neither stays as it is.</summary>
    private static string ChemistryOf(string typed) => Enum.GetValues<ThickenerChemistry>()
        .Where(c => Word(c).Equals(typed, StringComparison.OrdinalIgnoreCase)).Select(FileNames.Chemistries.Of).FirstOrDefault(typed);

    private ImmutableArray<string> Names<T>()
        where T : Material
        => [.. _kept.OfType<T>().Select(m => m.Name)];

    private Thickener? Kept(string name) => _kept.OfType<Material.OfThickener>().FirstOrDefault(t => t.Name == name)?.Thickener;

    private static string ToleranceOf(Core.Pots.Target? target) => target switch
    {
        Core.Pots.Target.Value { Tolerance: { } tolerance } => Typed(tolerance.Percent),
        Core.Pots.Target.Ends ends => Typed(
            Math.Round(100 * ((ends.High.MilliPascalSeconds / ends.Band.Aim.MilliPascalSeconds) - 1), 3)),
        _ => "15",
    };

    private static string Range(Thickener thickener)
        => $"{Typed(thickener.UsualRange.Low.Percent)}-{Typed(thickener.UsualRange.Top.Percent)}";

    /// <summary>The method of a run as it is typed: its name, then what it needs to know, as a run file's header has it.</summary>
    private static string MethodText(Run run)
    {
        var file = RunFile.FromRun(run);
        var traits = HeaderKeys.All.Where(k => k.IsOfMethod).SelectMany(k => k.Show(file).Select(v => $"{k.Name}={v}"));
        return string.Join("; ", traits.Prepend(run.MethodInForce.Id));
    }

    private FormAnswer<RunFile> Read(IReadOnlyList<string> texts)
    {
        var typed = _fields.Zip(texts).ToDictionary(f => f.First.Label, f => f.Second.Trim(), StringComparer.Ordinal);
        var lines = new List<(string Field, string Line)>();
        if (typed[Base].Length == 0)
        {
            return Wrong(Base, Say("the name of the base; runs with the same base inform each other"));
        }

        if (Lines(typed, lines) is { } wrong)
        {
            return wrong;
        }

        // The header's own reader knows what each of these may be, and says what is wrong in the same words.
        var edited = new HashSet<string>(
            ["name", "base", "base_g", "thickener", "target_mpas", "target_low_mpas", "target_high_mpas", "tolerance_pct",
                "target_string_mm", "product", "lot", "operator", "reference_temp_c", "method",
                .. HeaderKeys.All.Where(k => k.IsOfMethod).Select(k => k.Name)],
            StringComparer.Ordinal);
        var rest = _run is null
            ? []
            : HeaderText.Of(_run with { Id = null }).Where(l => !edited.Contains(l[..l.IndexOf(':', StringComparison.Ordinal)]));
        var (file, refusal, place) = HeaderText.TryRead([.. lines.Select(l => l.Line), .. rest]);
        if (file is null)
        {
            return Wrong(place is { } p && p <= lines.Count ? lines[p - 1].Field : Name, refusal!);
        }

        var run = file.Run with
        {
            Base = BaseOf(typed[Base]),
            Target = SameTarget(file.Run.Target) ? _known!.Target : file.Run.Target,
        };
        return FormAnswer<RunFile>.Of(file with { Run = run, Id = _run?.Id, UnknownColumns = _run?.UnknownColumns ?? [] });
    }

    private PotBase BaseOf(string name) => _kept.OfType<Material.OfBase>().FirstOrDefault(b => b.Name == name)?.Base
        ?? (_known?.Base is { } known && known.Name == name ? known : new PotBase(name));

    /// <summary>A target that was stated by its two ends stays so where nothing of it was changed.</summary>
    private bool SameTarget(Core.Pots.Target? target)
        => _known?.Target is Core.Pots.Target.Ends ends && target is { } typed
            && Math.Abs(typed.Band.Low.Ln - ends.Band.Low.Ln) < 1e-5 && Math.Abs(typed.Band.High.Ln - ends.Band.High.Ln) < 1e-5;

    private FormAnswer<RunFile>? Lines(Dictionary<string, string> typed, List<(string Field, string Line)> lines)
    {
        foreach (var (field, key) in new[] { (Name, "name"), (Base, "base"), (Product, "product"), (Lot, "lot"), (Operator, "operator") })
        {
            if (typed[field].Length > 0)
            {
                lines.Add((field, $"{key}: {typed[field]}"));
            }
        }

        if (TypedNumber.Read(typed[BaseGrams], NumberRange.GramsPresent, out var error, _known?.Base.Density) is not { } grams)
        {
            return Wrong(BaseGrams, error!);
        }

        lines.Add((BaseGrams, $"base_g: {FileNumbers.Show(grams)}"));
        if (Thickener(0, typed, lines, First, FirstRange) is { } first)
        {
            return first;
        }

        if (typed[Second].Length > 0 && Thickener(1, typed, lines, Second, SecondRange) is { } second)
        {
            return second;
        }

        foreach (var line in MethodLines(typed[TheMethod]))
        {
            lines.Add((TheMethod, line));
        }

        string[] keys = [.. HeaderKeys.All.Where(k => k.IsOfMethod).Select(k => k.Name)];
        if (
            MethodLines(typed[TheMethod]).Skip(1)
                .FirstOrDefault(l => !keys.Any(k => l.StartsWith(k + ":", StringComparison.Ordinal))) is { } unknown)
        {
            return Wrong(
                TheMethod, Say($"after the method's name, 'key=value' with one of {string.Join(", ", keys)}; read '{unknown}'"));
        }

        return Aims(typed, lines);
    }

    private FormAnswer<RunFile>? Aims(Dictionary<string, string> typed, List<(string Field, string Line)> lines)
    {
        if (typed[Target].Length > 0)
        {
            if (TargetIn(typed[Target], BaseOf(typed[Base]), lines, out var error) is not { } target)
            {
                return Wrong(Target, error!);
            }

            if (TypedNumber.Read(typed[Tolerance], ToleranceRange, out error) is not { } tolerance)
            {
                return Wrong(Tolerance, error!);
            }

            lines.Add((Target, $"target_mpas: {FileNumbers.Show(target)}"));
            lines.Add((Tolerance, $"tolerance_pct: {FileNumbers.Show(tolerance)}"));
        }

        if (typed[String].Length > 0)
        {
            lines.Add((String, $"target_string_mm: {typed[String].Replace(',', '.')}"));
        }

        if (typed[Reference].Length > 0)
        {
            if (TypedNumber.Read(typed[Reference], NumberRange.Temperature, out var error) is not { } celsius)
            {
                return Wrong(Reference, error!);
            }

            lines.Add((Reference, $"reference_temp_c: {FileNumbers.Show(celsius)}"));
        }

        return null;
    }

    /// <summary>The target in mPa·s; typed in it, or in the unit of the run's method.</summary>
    private static double? TargetIn(string text, PotBase potBase, List<(string Field, string Line)> lines, out string? error)
    {
        var (file, _, _) = HeaderText.TryRead(lines.Where(l => l.Field is Base or BaseGrams or TheMethod).Select(l => l.Line));
        return TypedTarget.Read(text, file is null ? null : file.Run with { Base = potBase }, out error);
    }

    /// <summary>
    /// What a dosed thickener was called before: its entries keep that name. One that stands in the other field has changed places only.
    /// </summary>
    private ImmutableArray<string> Formerly(int place, Dictionary<string, string> typed)
    {
        if (_known?.Thickeners.ElementAtOrDefault(place) is not { } was)
        {
            return [];
        }

        var name = typed[place == 0 ? First : Second];
        var isThere = typed[First] == was.Name || typed[Second] == was.Name;
        var isDosed = _known.Entries.OfType<Entry.Dosed>().Any(d => _known.FindThickener(d.Thickener) == was);
        return isThere || !isDosed ? _known.FindThickener(name)?.Formerly ?? []
            : [.. was.Formerly.Append(was.Name).Where(n => n != name)];
    }

    private FormAnswer<RunFile>? Thickener(
        int place, Dictionary<string, string> typed, List<(string Field, string Line)> lines, string nameField, string rangeField)
    {
        var (name, range) = (typed[nameField], typed[rangeField]);
        var chemistry = ChemistryOf(typed[place == 0 ? FirstChemistry : SecondChemistry]);
        if (!ThickenerLine.CanName(name))
        {
            return Wrong(nameField, name.Length == 0 ? Say("a thickener's name") : Say("a name without ';' and '='"));
        }

        var formerly = Formerly(place, typed);
        var was = formerly.IsEmpty ? null : _known?.Thickeners.ElementAtOrDefault(place);
        var known = Kept(name) ?? _known?.FindThickener(name) ?? was ?? new Thickener(name);
        var unknown = (_run?.UnknownTraits ?? []).Where(u => u.Thickener == name || u.Thickener == was?.Name)
            .Select(u => u with { Thickener = name });
        var traits = ThickenerLine.Show(
            new Thickener(name)
            {
                Active = known.Active,
                Density = known.Density,
                PricePerKilogram = known.PricePerKilogram,
                Dilution = known.Dilution,
                Formerly = formerly,
            },
            unknown);
        if (chemistry.Length > 0 && FileNames.Chemistries.Find(chemistry) is null)
        {
            return Wrong(
                nameField == First ? FirstChemistry : SecondChemistry,
                Say($"one of {string.Join(", ", FileNames.Chemistries.Names.Select(n => Word(n.Member)))}"));
        }

        // A chemistry that stands in the field from the last run means nothing for another thickener that the log knows.
        var isOther = Kept(name) is not null && _known?.FindThickener(name) is null;
        var stated = isOther ? FileNames.Chemistries.Of(known.Chemistry) : chemistry;
        var kind = stated.Length == 0 || stated == FileNames.Chemistries.Of(ThickenerChemistry.Other) ? "" : $"; chemistry={stated}";
        var span = range.Length == 0 ? "" : $"; range_pct={range.Replace(',', '.').Replace(" ", "", StringComparison.Ordinal)}";
        lines.Add((span.Length > 0 ? rangeField : nameField, $"thickener: {traits}{kind}{span}"));
        return null;
    }

    /// <summary>The header lines that a method's text stands for.</summary>
    private IEnumerable<string> MethodLines(string text)
    {
        var parts = text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        foreach (var (i, part) in parts.Index())
        {
            if (i > 0)
            {
                var (key, value) = part.Split('=', 2, StringSplitOptions.TrimEntries) is [var k, var v] ? (k, v) : (part, "");
                yield return $"{key}: {value}";
            }
            else if (_kept.OfType<Material.OfMethod>().FirstOrDefault(m => m.Name == part)?.Method is { } own)
            {
                yield return $"method: {own.Method.Id}";
                yield return FormattableString.Invariant($"repeatability_pct: {FileNumbers.Show(own.RepeatabilityInForce.Percent)}");
            }
            else
            {
                yield return $"method: {part}";
            }
        }
    }

    private FormAnswer<RunFile> Wrong(string field, string error)
        => FormAnswer<RunFile>.Wrong(Math.Max(0, _fields.Select(f => f.Label).ToList().IndexOf(field)), error);
}
