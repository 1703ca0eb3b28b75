namespace Viscolog.Core.Measuring;

/// <summary>
/// What a reading's value depends on besides the liquid: instrument and speed. Readings are one curve only where these agree.
/// </summary>
/// <param name="Method">The method.</param>
/// <param name="RevolutionsPerMinute">Speed in 1/min where torques are read; null elsewhere.</param>
public sealed record ShearCondition(Method Method, double? RevolutionsPerMinute)
{
    /// <summary>The condition of a reading.</summary>
    public static ShearCondition Of(Method method, InstrumentValue value) => new(method, value.Speed);
}
