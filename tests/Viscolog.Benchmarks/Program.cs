using Viscolog.Benchmarks;

return args switch
{
    ["dosing", .. var rest] => DosingBenchmark.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: dosing [--pots N] [--seed N] [--tau] [--risk PCT]   plays practice pots against the program's advice");
    return 1;
}
