using System.CommandLine;
using CarOnPads.Hosting;
using CarOnPads.Runtime;

try
{
    var settings = new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
    return await RunOptions.Command(Run.RunAsync).Parse(args).InvokeAsync(settings);
}
catch (SimulatorException e)
{
    Run.Complain(e);
    return 2;
}
