using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Faces.Page;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Publishing.Grpc;
using ScaleLink.Daemon.Setup;
using Serilog;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Puts together the daemon that sets a bay up, for this machine alone: there is no bay file that could let others in.</summary>
internal static class SetupApplication
{
    /// <summary>A web application that serves the setting up and nothing of a bay, not yet started.</summary>
    public static WebApplication Build(SetupSettings settings, ListenConfiguration listen, TimeProvider time)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseStaticWebAssets();
        builder.Host.UseSerilog();
        builder.Host.UseSystemd();
        builder.WebHost.ConfigureKestrel(kestrel => BayApplication.Listen(kestrel, listen));
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton(_ => new SearchedPorts(new PortLocks(null, time)));
        builder.Services.AddSingleton<SetupDesk>();
        builder.Services.AddSingleton<SetupEnd>();
        builder.Services.AddSingleton<StreamLimit>();
        builder.Services.AddGrpc(grpc =>
        {
            grpc.Interceptors.Add<StreamLimit>();
            grpc.Interceptors.Add<ActionLog>();
            grpc.Interceptors.Add<RefusalInterceptor>();
        });
        builder.Services.AddGrpcReflection();
        builder.Services.AddGrpcHealthChecks();

        var app = builder.Build();
        app.Use(next => context => new HostGuard(listen).Invoke(context, next));
        app.UseGrpcWeb(new GrpcWebOptions { DefaultEnabled = true });
        app.MapGrpcService<SetupService>();
        app.MapGrpcService<SetupControlService>();
        app.MapGrpcReflectionService();
        app.MapGrpcHealthChecksService();
        app.MapSetupBoard();
        return app;
    }
}
