namespace Viscolog.Tests.RunFiles;

public class RefusalTests
{
    public static TheoryData<string, string, string> Headers => RefusedHeaders.All;

    public static TheoryData<string, string, string> Tables => RefusedTables.All;

    [Theory]
    [MemberData(nameof(Headers))]
    [MemberData(nameof(Tables))]
    public void Bad_input_is_refused_with_what_to_do(string what, string file, string expected)
        => Assert.Equal($"{what}: {expected}", $"{what}: {FileText.Refusal(file)}");
}
