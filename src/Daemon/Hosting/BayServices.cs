using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Ledger;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Publishing;
using ScaleLink.Daemon.Publishing.Grpc;
using ScaleLink.Daemon.Publishing.Mqtt;
using ScaleLink.Daemon.Recording;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Everything between the ports and the faces.</summary>
internal static class BayServices
{
    public static void AddBay(this IServiceCollection services, BayConfiguration bay, TimeProvider time)
    {
        services.AddSingleton(bay);
        services.AddSingleton(time);
        services.AddSingleton<BayClock>();
        services.AddSingleton(_ => new LedgerDatabase(bay.LedgerPath));
        services.AddSingleton<IZeroStore, ZeroLedger>();
        services.AddSingleton<ZeroCapture>();
        services.AddSingleton<ILinkFactory, LinkFactory>();
        services.AddSingleton(provider => new LiveBay(
            [.. bay.Pads.Select(p => new PadChannel(p, provider.GetRequiredService<BayClock>(), provider.GetRequiredService<IZeroStore>()))]));
        services.AddSingleton(provider => new BayWeigher(provider.GetRequiredService<LiveBay>().Pads, bay.Weigh, bay.Car));
        services.AddSingleton<ApiMapping>();
        services.AddSingleton<PadsList>();
        services.AddMqtt(bay);
        services.AddRecorder(bay);
        services.AddHostedService<LinkService>();
        services.AddHostedService<WeighingLoop>();
    }

    // Before the links: what is wrong with them from the start is to be seen.
    private static void AddRecorder(this IServiceCollection services, BayConfiguration bay)
    {
        services.AddSingleton(bay.Recorder);
        services.AddSingleton<CaptureFolder>();
        services.AddSingleton<FlightRecorder>();
        services.AddHostedService<FaultCaptures>();
    }

    private static void AddMqtt(this IServiceCollection services, BayConfiguration bay)
    {
        if (bay.Mqtt.Broker == BrokerKind.Off)
            return;
        services.AddSingleton(bay.Mqtt);
        services.AddSingleton<BrokerPass>();
        services.AddSingleton(new MqttTopics(bay.Bay));
        services.AddSingleton<MqttMapping>();
        if (bay.Mqtt.Broker == BrokerKind.Embedded)
            services.AddHostedService<EmbeddedBroker>();
        services.AddHostedService<MqttPublisher>();
    }
}
