using ScaleLink.Daemon.Runtime;
using Serilog;
using Serilog.Events;

namespace ScaleLink.Daemon.Hosting;

/// <summary>The daemon's log: one line an event, on standard error, so that standard output stays free.</summary>
internal static class Logging
{
    private const string Template = "{Timestamp:yyyy-MM-ddTHH:mm:ss.fffzzz} {Level:u3} {SourceContext} {Message:lj}{NewLine}{Exception}";

    public static Serilog.ILogger Create() => new LoggerConfiguration()
        .MinimumLevel.Information()
        .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
        .MinimumLevel.Override("Grpc", LogEventLevel.Warning)
        // A pad that is away is told by its link, once; the health checks would tell it every second.
        .MinimumLevel.Override("Microsoft.Extensions.Diagnostics.HealthChecks", LogEventLevel.Fatal)
        // Told as a sentence with its code by whoever runs the host; the host would print its stack as well.
        .Filter.ByExcluding(e => e.Exception is StartException)
        .WriteTo.Console(outputTemplate: Template, standardErrorFromLevel: LogEventLevel.Verbose)
        .CreateLogger();
}
