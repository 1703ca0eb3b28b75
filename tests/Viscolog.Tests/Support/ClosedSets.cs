namespace Viscolog.Tests.Support;

/// <summary>Looks through the cases of closed sets.</summary>
internal static class ClosedSets
{
    /// <summary>Asserts that every case of some sets is among those that were tried.</summary>
    public static void AllTried(Type[] sets, IEnumerable<object> tried)
    {
        var types = tried.Select(t => t.GetType()).ToHashSet();
        Assert.All(sets, set => Assert.All(set.Assembly.GetTypes().Where(t => t.IsSubclassOf(set)), t => Assert.Contains(t, types)));
    }
}
