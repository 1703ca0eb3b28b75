using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Quantities;

namespace Viscolog.Tests.Support;

/// <summary>Pictures at the edge of what a run can be.</summary>
internal static class OddPictures
{
    public static IReadOnlyList<IReadOnlyList<RunPicture>> All()
    {
        var full = SamplePictures.Full();
        return
        [
            [SamplePictures.Empty()],
            [SamplePictures.OneReading()],
            [full with { Curve = [] }],
            [full with { Readings = [] }],
            [full with { Target = null, Limit = null, Next = null }],
            [full with { Readings = [.. full.Readings.Select(r => r with { Wait = null, Doubted = true })] }],
            [full with { Readings = [.. full.Readings.Select(r => r with { StandardizedResidual = double.NaN })] }],
            [full with { Limit = new DoseLimit(Dose.None, new LimitReason.UsualRange()) }],
            [full with { Limit = new DoseLimit(Dose.FromPercent(1000), new LimitReason.Flattens()) }],
            [full with { Limit = new DoseLimit(Dose.FromPercent(3), new LimitReason.Falls()) }],
            [full with { Next = full.Next! with { From = Dose.FromPercent(2.4) } }],
            [full with { Curve = [full.Curve[0]] }],
            [full with { Curve = [full.Curve[0], full.Curve[0], full.Curve[5]] }],
            [full with { Curve = [.. full.Curve.Select(Vast)] }],
            [full with { Curve = [.. full.Curve.Select(Flat)], Readings = [], Steps = [], Target = null, Next = null }],
            [new RunPicture("\u0000\u202E", "\u001b", Temperature.FromCelsius(-20)) { Readings = full.Readings }],
            [full with { Name = "Гель 漆ゲル \u0007 <&> _{x}" }],
            SamplePictures.Several(12),
            [
                SamplePictures.Empty(),
                full,
                SamplePictures.OneReading() with { Thickener = "TB", ReferenceTemperature = Temperature.FromCelsius(20) },
            ],
        ];
    }

    private static CurveSample Vast(CurveSample sample)
    {
        var wide = sample.Reading with { Low = SamplePictures.Mpas(1e-200), High = SamplePictures.Mpas(1e200) };
        return sample with { Body = wide, Reading = wide };
    }

    private static CurveSample Flat(CurveSample sample)
    {
        var same = new Estimate(
            SamplePictures.Mpas(1000),
            SamplePictures.Mpas(1000),
            SamplePictures.Mpas(1000),
            Percentage.FromPercent(90));
        return new(sample.Dose, same, same);
    }
}
