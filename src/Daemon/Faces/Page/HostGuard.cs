using System.Net;
using ScaleLink.Daemon.Configuration;

namespace ScaleLink.Daemon.Faces.Page;

/// <summary>
/// Answers a browser only under names that are this bay's. A page of a stranger can point its own name at this machine and would then count as
/// the same origin; it cannot make a browser write another name as the host.
/// </summary>
internal sealed class HostGuard(ListenConfiguration listen)
{
    private const string Local = "localhost";
    private static readonly Diagnostic Strange = new(ServiceCodes.HostNameUnknown, "This bay is not asked for under that name.", "Open it by its address, or add the name to listen.names in the bay file.");

    /// <summary>Whether a request for that host, without its port, is meant for this bay.</summary>
    public bool Admits(string host) => IPAddress.TryParse(host, out var address)
        // An address is not looked up, so nobody can point it elsewhere.
        ? listen.OtherMachines || IPAddress.IsLoopback(address)
        : host.Equals(Local, StringComparison.OrdinalIgnoreCase) || listen.Names.Contains(host, StringComparer.OrdinalIgnoreCase);

    /// <summary>Turns away what is not admitted on the page port. No browser speaks what the gRPC port speaks.</summary>
    public async Task Invoke(HttpContext context, RequestDelegate next)
    {
        if (HttpProtocol.IsHttp2(context.Request.Protocol) || Admits(context.Request.Host.Host))
        {
            await next(context);
            return;
        }

        context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
        await context.Response.WriteAsync($"{Strange}\n");
    }
}
