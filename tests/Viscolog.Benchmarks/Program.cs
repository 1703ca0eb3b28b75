using Viscolog.Benchmarks;
using Viscolog.Benchmarks.Beside;
using Viscolog.Benchmarks.Fuzz;

return args switch
{
    ["dosing", .. var rest] => DosingBenchmark.Run(rest),
    ["pair", .. var rest] => PairBenchmark.Run(rest),
    ["verdicts", .. var rest] => VerdictBenchmark.Run(rest),
    ["speed", var path] => SpeedBenchmark.Run(path),
    ["log", .. var sizes] => LogBenchmark.Run(sizes),
    ["kill", .. var rounds] => KillRounds.Run(rounds),
    ["appends", var log, var first] => KillRounds.Append(log, first),
    ["screen", .. var size] => ScreenBenchmark.Run(size),
    ["walls"] => Walls.Run(),
    ["share", .. var sizes] => ShareBenchmark.Run(sizes),
    ["fuzz", .. var rounds] => FuzzRounds.Run(rounds),
    ["beside", .. var program] => BesideBenchmark.Run(program.FirstOrDefault()),
    [BesideBenchmark.Nothing] => 0,
    ["priors", .. var rest] => ShapePriors.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine(
        "usage: dosing [--pots N] [--seed N] [--kinds KINDS | --published] [--tau | --stretched | --slow [--said-quick]] [--as-told] "
            + "[--drift] [--warm C] [--scatter PCT] [--thin] [--history N] [--unlike] [--ideal] [--advised-only] [--risk PCT]");
    Console.Error.WriteLine("         plays practice pots against the program's advice and other players");
    Console.Error.WriteLine("         KINDS: own, published, series, threshold, sharp-threshold, real, real-tune or real-left-out");
    Console.Error.WriteLine("       pair [--pots N] [--seed N] [--advised-only] [--risk PCT]");
    Console.Error.WriteLine("         the same for two thickeners, body and string together");
    Console.Error.WriteLine("       verdicts [--batches N] [--seed N]");
    Console.Error.WriteLine("         checks batches near their limits, read by benches that scatter more or less than the file says");
    Console.Error.WriteLine(
        "       speed RUN                                            times one advice on a run file, and on practice pots with "
            + "earlier runs");
    Console.Error.WriteLine(
        "       log [READINGS]...                                    how the log grows: import, open, list, show, advise, append");
    Console.Error.WriteLine(
        "       kill [ROUNDS] [SEED]                                 kills programs at work on a log and looks at what is left");
    Console.Error.WriteLine(
        "       fuzz [THOUSANDS] [SEED]                              gives every reader so many thousand inputs, led by the "
            + "branches that they take");
    Console.Error.WriteLine("       screen [READINGS]                                    times a keystroke on the screens");
    Console.Error.WriteLine(
        "       share [BENCHES] [RUNS] [READINGS]                    shares logs of so many benches at once, on a PostgreSQL "
            + "server of its own");
    Console.Error.WriteLine(
        "       beside [PROGRAM]                                     the same jobs by this program, by SciPy, R, CsvHelper and "
            + "an empty program");
    Console.Error.WriteLine(
        "       priors [--rounds N] [--laws N] [--without KIND]      fits the priors of the shapes to laws of the tuning kinds");
    Console.Error.WriteLine(
        "       walls                                                counts the calls between rooms that advise and a keystroke make");
    return 1;
}
