using Viscolog.Tests.Support;

namespace Viscolog.Tests.Fuzz;

/// <summary>Whatever the readers are given; the long rounds are the benchmark 'fuzz'.</summary>
public sealed class FuzzTests
{
    private const int Seed = 20_261_127;

    public static TheoryData<string> Readers => [.. Reader.All.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_reader_answers_or_refuses_whatever_it_is_given(string name)
    {
        var fuzzer = new Fuzzer(Reader.All.Single(r => r.Name == name), Seed);
        var found = fuzzer.Run(Sweep.Tries(200_000, 4_000));
        Assert.True(found is null, found is var (input, fault) ? $"{fault.GetType().Name}: {fault.Message}\n{Fuzzer.Shown(input)}\n{fault.StackTrace}" : "");
        Assert.True(fuzzer.Taken > 0 || name == "seal and query copy", "nothing was taken");
    }
}
