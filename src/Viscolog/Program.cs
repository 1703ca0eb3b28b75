using System.Text;
using Viscolog.Cli;

var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var output = new StreamWriter(Console.OpenStandardOutput(), utf8) { NewLine = "\n" };
using var error = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true };
return CommandLine.Run(args, Terminal.OfProcess(output, error), output);
