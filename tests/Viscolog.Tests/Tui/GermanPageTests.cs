using Viscolog.Languages;

namespace Viscolog.Tests.Tui;

public sealed class GermanPageTests : PageTests
{
    public GermanPageTests() => Tongue.Speak(Language.German);
}

public sealed class GermanPairPageTests : PairPageTests
{
    public GermanPairPageTests() => Tongue.Speak(Language.German);
}

public sealed class GermanPracticePageTests : PracticePageTests
{
    public GermanPracticePageTests() => Tongue.Speak(Language.German);
}

public sealed class GermanCheckPageTests : CheckPageTests
{
    public GermanCheckPageTests() => Tongue.Speak(Language.German);
}
