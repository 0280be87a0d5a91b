using Microsoft.AspNetCore.Connections;
using ScaleLink.Daemon.Configuration;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Says which port is taken and which option moves it.</summary>
internal static class PortInUse
{
    public static Diagnostic? Explain(Exception failure, ListenConfiguration listen)
    {
        if (failure.InnerException is not AddressInUseException && failure is not AddressInUseException)
            return null;
        var isPage = failure.Message.Contains($":{listen.PagePort}", StringComparison.Ordinal);
        var (port, option, key) = isPage ? (listen.PagePort, "--page-port", "listen.page_port") : (listen.GrpcPort, "--grpc-port", "listen.grpc_port");
        return new(ServiceCodes.PortTaken, $"Port {port} is in use by another program.", $"Stop it, or choose another port with {option} or {key}.");
    }
}
