using System.Collections.Immutable;
using CsCheck;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;

namespace Viscolog.Tests.RunFiles;

/// <summary>Generates run files that hold all that the format can hold.</summary>
internal static class RunFileGen
{
    private const string Marks = "aB7 ,;\"'#=:.-+\n\r\tµ·é雨@";

    // Values as a person types them, and values with every bit in use.
    private static Gen<double> Number(double least, double most)
        => Gen.OneOf(Gen.Double[least, most], Gen.Int[1, 9999].Select(i => Math.Clamp(i / 100.0, least, most)));

    private static readonly Gen<string> Cell = Gen.Char[Marks].Array[1, 12].Select(c => new string(c))
        .Where(s => !string.IsNullOrWhiteSpace(s));

    private static readonly Gen<string> Line = Cell.Select(s => s.Replace('\n', ' ').Replace('\r', ' ').Trim()).Where(s => s.Length > 0);

    private static readonly Gen<string> Word = Gen.Char["abcxyz19"].Array[1, 6].Select(c => "x-" + new string(c));

    private static readonly Gen<TimeSpan> Seconds = Gen.OneOf(
        Gen.Int[0, 9999].Select(s => TimeSpan.FromSeconds(s)),
        Gen.Long[0, 1_000_000_000_000].Select(TimeSpan.FromTicks));

    private static readonly Gen<DateTimeOffset> Time = Gen.Select(
        Gen.Long[0, DateTime.MaxValue.Ticks - TimeSpan.TicksPerDay],
        Gen.Int[-14 * 60, 14 * 60],
        (ticks, minutes) => new DateTimeOffset(Math.Max(ticks, TimeSpan.TicksPerDay), TimeSpan.FromMinutes(minutes)));

    private static readonly Gen<Percentage> Percent = Number(0.01, 99).Select(Percentage.FromPercent);

    private static readonly Gen<Viscosity> Thickness = Number(0.01, 1e7).Select(Viscosity.FromMilliPascalSeconds);

    private static readonly Gen<Thickener> Thickeners = Gen.Select(
        Line.Where(ThickenerLine.CanName),
        Gen.Enum<ThickenerChemistry>(),
        Number(0.01, 3),
        Maybe(Percent),
        Gen.Int[0, 100_000].Select(c => c % 3 == 0 ? (decimal?)null : c / 1000m),
        Number(0.01, 10),
        (name, chemistry, low, active, price, water) => new Thickener(name)
        {
            Chemistry = chemistry,
            UsualRange = new(Dose.FromPercent(low), Dose.FromPercent(low + 0.7)),
            Active = active,
            Density = active is null ? null : Density.FromGramsPerMilliliter(1 + low),
            PricePerKilogram = price,
            Dilution = price is null ? PreDilution.None : new(low, water),
        });

    private static readonly Gen<Target?> Targets = Gen.OneOf(
        Gen.Const((Target?)null),
        Gen.Select(Thickness, Maybe(Percent), (v, t) => (Target?)new Target.Value(v, t)),
        Thickness.Select(v => (Target?)new Target.Ends(v, Viscosity.FromMilliPascalSeconds(v.MilliPascalSeconds * 1.3))));

    /// <summary>Any run.</summary>
    public static readonly Gen<Run> Runs =
        from texts in Maybe(Line).Array[5]
        from grams in Number(50, 1000)
        from all in Thickeners.Array[0, 3]
        let thickeners = all.DistinctBy(t => t.Name, StringComparer.Ordinal).ToImmutableArray()
        from target in Targets
        from method in Gen.Int[-1, Method.All.Count - 1].Select(i => i < 0 ? null : Method.All[i])
        from numbers in Maybe(Number(0.1, 99)).Array[5]
        from entries in Entries(thickeners, method ?? Method.Direct)
        select new Run(new(texts[0], Made(numbers[0], Density.FromGramsPerMilliliter)), Mass.FromGrams(grams))
        {
            Name = texts[1],
            Lot = texts[2],
            Operator = texts[3],
            Note = texts[4],
            Thickeners = thickeners,
            Target = target,
            TargetString = numbers[1] is { } mm ? new(Length.FromMillimeters(mm), Length.FromMillimeters(mm + 10.1)) : null,
            ReferenceTemperature = Made(numbers[2], v => Temperature.FromCelsius(v - 20)),
            Method = method,
            Setup = Setup(numbers[4]),
            Repeatability = Made(numbers[3], Percentage.FromPercent),
            ScaleStep = Made(numbers[4], Mass.FromGrams),
            TooStiff = Made(numbers[2], v => Viscosity.FromMilliPascalSeconds(v * 1000)),
            Entries = entries,
        };

    /// <summary>Any run file, with keys, traits and columns that the format does not know.</summary>
    public static readonly Gen<RunFile> Files =
        from run in Runs
        from keys in Gen.Select(Word, Maybe(Line), (k, v) => new UnknownKey(k, v ?? "")).Array[0, 3]
        from columns in Gen.Select(Word, Line, (w, l) => w + l).Array[0, 3]
        let names = columns.Distinct(StringComparer.OrdinalIgnoreCase).ToImmutableArray()
        from texts in Maybe(Cell).Array[names.Length * run.Entries.Length]
        from tolerance in Maybe(Percent)
        from id in Gen.Guid
        from which in Gen.Int[0, 2]
        let file = RunFile.FromRun(run)
        select file with
        {
            Id = tolerance is null ? null : id,
            UnknownKeys = [.. keys],
            UnknownColumns = names,
            UnknownTraits =
            [
                .. run.Thickeners.Take(keys.Length)
                    .Select((t, i) => new UnknownTrait(t.Name, keys[i].Key, keys[i].Value.Replace(';', '/'))),
            ],
            UnusedTolerance = run.Target is Target.Value ? null : tolerance,
            Rows =
            [
                .. file.Rows.Select(
                    (r, i) => r with
                    {
                        Replaces = which == 0 && i > 0 && IsVoid(run, file.Rows[i - 1]),
                        Unknown = [.. texts.Skip(i * names.Length).Take(names.Length).Select(t => t ?? "")],
                    }),
            ],
        };

    private static bool IsVoid(Run run, RunFileRow row) => row.EntryCount > 0 && !run.Entries[row.FirstEntry].Counts;

    private static Gen<ImmutableArray<Entry>> Entries(ImmutableArray<Thickener> thickeners, Method method)
    {
        var mass = Number(0.001, 0.9).Select(Mass.FromGrams);
        var pouring = thickeners.IsEmpty
            ? Gen.Const((Entry)new Entry.Noted("nothing to pour"))
            : Gen.Select(Gen.Int[0, thickeners.Length - 1], mass, (i, m) => (Entry)new Entry.Dosed(thickeners[i].Name, m));
        var any = Gen.OneOf(
            pouring,
            Readings(method).Select(r => (Entry)new Entry.Measured(r)),
            mass.Select(m => (Entry)new Entry.TakenOut(m)),
            mass.Select(m => (Entry)new Entry.LetDown(m)),
            mass.Select(m => (Entry)new Entry.Watered(m)),
            Cell.Select(t => (Entry)new Entry.Noted(t)));
        var timed = Gen.Select(
            any,
            Rarely(Time),
            Rarely(Cell.Select(c => c)),
            (e, time, reason) => e with { Time = time, VoidReason = reason });
        return timed.Array[0, 12].Select(Standing);
    }

    // Standing times as a pot has them: they only grow.
    private static ImmutableArray<Entry> Standing(Entry[] entries)
    {
        var waits = new Queue<TimeSpan>(entries.OfType<Entry.Measured>().Select(m => m.Reading.Wait).OfType<TimeSpan>().Order());
        return
        [
            .. entries.Select(
                e => e is Entry.Measured { Reading.Wait: not null } m ? m with { Reading = m.Reading with { Wait = waits.Dequeue() } } : e),
        ];
    }

    private static Gen<Reading> Readings(Method method)
        => from value in Value(method)
           from stir in Maybe(Seconds)
           from wait in Maybe(Seconds)
           from numbers in Maybe(Number(0.1, 13)).Array[3]
           from fault in Maybe(Gen.Enum<ObservedFault>())
           select new Reading
           {
               Value = value,
               Stir = stir,
               Wait = wait,
               Temperature = Made(numbers[0], Temperature.FromCelsius),
               Acidity = Made(numbers[1], Acidity.FromPh),
               StringLength = value is null ? Length.FromMillimeters(3) : Made(numbers[2], Length.FromMillimeters),
               Fault = fault,
           };

    private static Gen<InstrumentValue?> Value(Method method)
        => Gen.Select(Number(0.01, 1e4), Number(0.1, 200), Gen.Int[0, 3], (v, rpm, which)
            => which == 0
                ? null
                : method.Scales[which % method.Scales.Length] is { HasSpeed: true } torque
                ? torque.Make(rpm, v)
                : method.Scales[^1].Make(v));

    private static MethodSetup Setup(double? number) => number is not { } v ? MethodSetup.None : new()
    {
        PerPercentTorque = Viscosity.FromMilliPascalSeconds(v),
        BallDiameter = Length.FromMillimeters(v + 1),
        BallDensity = Density.FromGramsPerMilliliter(v + 2),
        Fall = Length.FromMillimeters(v + 3),
        JarDiameter = Length.FromMillimeters(v + 4),
        CylinderHeight = Length.FromMillimeters(v + 5),
        CylinderDiameter = Length.FromMillimeters(v + 6),
        TemperatureCoefficient = TemperatureCoefficient.Stated(v + 7),
    };

    private static T? Made<T>(double? number, Func<double, T> make)
        where T : struct
        => number is { } v ? make(v) : null;

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : struct
        => Gen.Select(Gen.Bool, gen, (there, value) => there ? value : (T?)null);

    private static Gen<string?> Maybe(Gen<string> gen) => Gen.Select(Gen.Bool, gen, (there, value) => there ? value : null);

    private static Gen<T?> Rarely<T>(Gen<T> gen)
        where T : struct
        => Gen.Select(Gen.Int[0, 4], gen, (i, value) => i == 0 ? value : (T?)null);

    private static Gen<string?> Rarely(Gen<string> gen) => Gen.Select(Gen.Int[0, 4], gen, (i, value) => i == 0 ? value : null);
}
