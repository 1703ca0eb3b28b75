using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Practice;

/// <summary>What truly is in a practice pot and how far it has built up. Never changes: each happening gives the pot after it.</summary>
/// <param name="Law">The law that hides in it.</param>
/// <param name="TimeConstant">τ of the build-up (see <see cref="BuildUp"/>); zero for a pot that is settled at once.</param>
/// <param name="RangeTop">Top of the thickener's usual range, the law's unit of dose; above 0.</param>
/// <param name="Base">Base in the pot; above 0.</param>
public sealed record HiddenPot(HiddenLaw Law, TimeSpan TimeConstant, Dose RangeTop, Mass Base)
{
    private double StartLn { get; init; }

    /// <summary>β of the build-up (see <see cref="BuildUp"/>); 1 for first order.</summary>
    public double Stretch { get; init; } = 1;

    /// <summary>Thickener, as supplied, stirred in so far.</summary>
    public Mass Thickener { get; private init; }

    /// <summary>The true dose.</summary>
    public Dose Dose => Dose.FromPercent(100 * Thickener.Grams / Base.Grams);

    /// <summary>The body that it settles at.</summary>
    public Viscosity Settled => Viscosity.FromLn(SettledLn);

    /// <summary>The body now.</summary>
    public Viscosity Now => Viscosity.FromLn(LnNow);

    /// <summary>Standing since it was last stirred; null where nothing was stirred in, or where it settles at once.</summary>
    /// <remarks>Kept exactly, so that standing in many small parts is the same as standing once.</remarks>
    public TimeSpan? Standing { get; private init; }

    /// <summary>ln of the body now, in mPa·s.</summary>
    internal double LnNow => Standing is { } stood
        ? SettledLn + ((StartLn - SettledLn) * new Kinetics(TimeConstant.TotalSeconds, Stretch).Remaining(stood.TotalSeconds))
        : SettledLn;

    /// <summary>ln of the settled body, in mPa·s.</summary>
    internal double SettledLn => Law.LnBody(Thickener.Grams / Base.Grams * 100 / RangeTop.Percent);

    /// <summary>The pot after thickener and base were stirred in; it stands from then on.</summary>
    /// <param name="thickener">Thickener that truly went in.</param>
    /// <param name="base">Base that went in.</param>
    public HiddenPot StirredIn(Mass thickener, Mass @base) => this with
    {
        Thickener = Thickener + thickener,
        Base = Base + @base,
        StartLn = LnNow,
        Standing = TimeConstant > TimeSpan.Zero ? TimeSpan.Zero : null,
    };

    /// <summary>The pot after it stood for a time.</summary>
    /// <param name="time">Zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative.</exception>
    public HiddenPot Stood(TimeSpan time)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(time, TimeSpan.Zero);
        return this with { Standing = Standing + time };
    }
}
