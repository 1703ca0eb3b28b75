using System.Globalization;

namespace Viscolog.Tests.Support;

/// <summary>Lets a test run as on a German machine.</summary>
internal static class German
{
    /// <summary>Sets the culture of the test; the runner gives each test its own.</summary>
    public static void Set()
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        CultureInfo.CurrentUICulture = CultureInfo.CurrentCulture;
        Assert.Equal("1,5", 1.5.ToString(CultureInfo.CurrentCulture));
    }
}
