namespace Viscolog.Core.Tests;

public sealed class T
{
    [Xunit.Fact]
    public void Culture() => Xunit.Assert.Equal(",", new System.Globalization.CultureInfo("de-DE").NumberFormat.NumberDecimalSeparator);
}
