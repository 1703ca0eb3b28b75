using System.Globalization;

namespace Viscolog.Tests.Support;

/// <summary>Another culture, one with a decimal comma, until disposed.</summary>
internal sealed class CultureSwitch : IDisposable
{
    private readonly CultureInfo _before = CultureInfo.CurrentCulture;

    public CultureSwitch(string name)
    {
        CultureInfo.CurrentCulture = new CultureInfo(name);
        if (CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator != ",")
        {
            throw new InvalidOperationException("the machine has no data of this culture, so the test would prove nothing");
        }
    }

    public void Dispose() => CultureInfo.CurrentCulture = _before;
}
