using Viscolog.Benchmarks;

return args switch
{
    ["dosing", .. var rest] => DosingBenchmark.Run(rest),
    ["speed", var path] => SpeedBenchmark.Run(path),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: dosing [--pots N] [--seed N] [--tau] [--drift] [--published] [--history N] [--unlike] [--ideal] [--advised-only] [--risk PCT]");
    Console.Error.WriteLine("         plays practice pots against the program's advice and other players");
    Console.Error.WriteLine("       speed RUN                                            times one advice on a run file");
    return 1;
}
