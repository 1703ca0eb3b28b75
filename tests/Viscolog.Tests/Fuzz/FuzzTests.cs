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
        var found = fuzzer.Run(Sweep.Tries(200_000, 2_000));
        Assert.True(
            found is null,
            found is var (input, fault) ? $"{fault.GetType().Name}: {fault.Message}\n{Fuzzer.Shown(input)}\n{fault.StackTrace}" : "");
        Assert.True(fuzzer.Taken > 0 || name == "seal and query copy", "nothing was taken");
    }

    /// <summary>What long rounds found and was mended.</summary>
    [Theory]
    [
        InlineData(
            "flow file",
            "# geometry: concentric-cylinder\n# bob_radius_mm: 13\n# cup_radius_mm: 14\n# bob_length_mm: 40\n# full_scale_mnm: 5\n"
                + "rpm,torque_pct\n1,1e-320\n2,8\n4,12\n8,17\n"),
    ]
    [InlineData("flow file", "shear_rate_1_s,viscosity_mpas\n1e-322,0.001\n2,8\n4,12\n8,17\n")]
    [
        InlineData(
            "oils file",
            "# viscolog-oils: 1\ndate,method,oil,certified_mpas,certified_temp_c,viscosity_mpas,temp_c,mood\n"
                + "2026-09-07,direct,N,1012,25,1019,25.1,\u0019\n"),
    ]
    public void What_was_found_once_is_answered_or_refused(string name, string input)
        => Reader.All.Single(r => r.Name == name).Read(System.Text.Encoding.UTF8.GetBytes(input));
}
