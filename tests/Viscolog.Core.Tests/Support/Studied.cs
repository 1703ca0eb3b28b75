using Viscolog.Core.Advising;
using Xunit;

namespace Viscolog.Core.Tests.Support;

/// <summary>Studies that must not be refused.</summary>
internal static class Studied
{
    public static Study Of(StudyRequest request) => Assert.IsType<StudyOutcome.Made>(Study.Of(request)).Study;
}
