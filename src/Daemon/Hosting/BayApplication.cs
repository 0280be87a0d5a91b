using System.Net;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Faces.Feed;
using ScaleLink.Daemon.Faces.Page;
using ScaleLink.Daemon.Publishing.Grpc;
using ScaleLink.Daemon.Recording;
using ScaleLink.Daemon.Workflows.Calibration.Service;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.InclinometerZeros;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.PadInterchange;
using ScaleLink.Daemon.Workflows.SetupSheets;
using ScaleLink.Daemon.Workflows.SiteCheck;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using ScaleLink.Daemon.Workflows.Zeros;
using Serilog;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Puts the daemon together.</summary>
internal static class BayApplication
{
    /// <summary>A web application with everything in it, not yet started.</summary>
    public static WebApplication Build(BayConfiguration bay, TimeProvider time)
    {
        // The board's files lie beside the daemon, wherever it is started from; out of a build they are found through its manifest.
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseStaticWebAssets();
        builder.Host.UseSerilog();
        builder.Host.UseSystemd();
        builder.WebHost.ConfigureKestrel(kestrel => Listen(kestrel, bay.Listen));
        builder.Services.AddBay(bay, time);
        builder.Services.AddSingleton<StreamLimit>();
        builder.Services.AddSingleton<StepsOnce>();
        builder.Services.AddGrpc(grpc =>
        {
            grpc.Interceptors.Add<StreamLimit>();
            grpc.Interceptors.Add<StepsOnce>();
            grpc.Interceptors.Add<ActionLog>();
            grpc.Interceptors.Add<RefusalInterceptor>();
        });
        builder.Services.AddGrpcReflection();
        builder.Services.AddGrpcHealthChecks().AddBayChecks(bay);

        var app = builder.Build();
        app.Use(next => context => new HostGuard(bay.Listen).Invoke(context, next));
        app.UseGrpcWeb(new GrpcWebOptions { DefaultEnabled = true });
        app.MapGrpcService<FeedService>();
        app.MapGrpcService<PadsService>();
        app.MapGrpcService<PadControlService>();
        app.MapGrpcService<CarsService>();
        app.MapGrpcService<CarControlService>();
        app.MapGrpcService<PatchService>();
        app.MapGrpcService<PatchControlService>();
        app.MapGrpcService<InclinometerZerosService>();
        app.MapGrpcService<InclinometerZeroControlService>();
        app.MapGrpcService<SiteCheckService>();
        app.MapGrpcService<SiteCheckControlService>();
        app.MapGrpcService<WorkSessionsService>();
        app.MapGrpcService<WorkSessionControlService>();
        app.MapGrpcService<CalibrationProceduresService>();
        app.MapGrpcService<CalibrationProcedureControlService>();
        app.MapGrpcService<PadInterchangesService>();
        app.MapGrpcService<PadInterchangeControlService>();
        app.MapGrpcService<SetupSheetsService>();
        app.MapGrpcService<SetupSheetControlService>();
        app.MapGrpcService<RecorderService>();
        app.MapGrpcService<RecorderControlService>();
        app.MapGrpcReflectionService();
        app.MapGrpcHealthChecksService();
        app.MapBoard();
        return app;
    }

    /// <summary>gRPC proper needs HTTP/2 without TLS, which no browser speaks; the page and gRPC-Web go over HTTP/1.1.</summary>
    public static void Listen(KestrelServerOptions kestrel, ListenConfiguration listen)
    {
        var address = IPAddress.Parse(listen.Address);
        kestrel.Limits.Http2.MaxStreamsPerConnection = StreamLimit.Transport;
        kestrel.Listen(address, listen.PagePort, o => o.Protocols = HttpProtocols.Http1);
        kestrel.Listen(address, listen.GrpcPort, o => o.Protocols = HttpProtocols.Http2);
    }
}
