using Viscolog.Cli;

var terminal = Terminal.OfProcess();
var code = CommandLine.Run(args, terminal, Console.Out);
terminal.Flush();
return code;
