using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Clocks;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Faces;
using ScaleLink.Daemon.Faces.Feed;
using ScaleLink.Daemon.Faces.Mqtt;
using ScaleLink.Daemon.Faces.Mqtt.Broker;
using ScaleLink.Daemon.Faces.Page;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Recording;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Calibration;
using ScaleLink.Daemon.Workflows.Calibration.Service;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.InclinometerZeros;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.PadInterchange;
using ScaleLink.Daemon.Workflows.SetupSheets;
using ScaleLink.Daemon.Workflows.SiteCheck;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using ScaleLink.Daemon.Workflows.Zeros;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Everything between the ports and the faces.</summary>
internal static class BayServices
{
    public static void AddBay(this IServiceCollection services, BayConfiguration bay, TimeProvider time)
    {
        services.AddSingleton(bay);
        services.AddSingleton(time);
        services.AddSingleton<BayClock>();
        // Made before the ledger is opened, and so given back after it is closed.
        services.AddSingleton(_ => LedgerOpening.OrSay(bay.LedgerPath, () => LedgerLock.Take(bay.LedgerPath, LockHolder.Me(time.GetUtcNow(), bay.Bay))));
        services.AddSingleton(provider => OpenLedger(provider.GetRequiredService<HolderLock>(), bay.LedgerPath, time));
        services.AddSingleton(provider => provider.GetRequiredService<OpenedLedger>().Ledger);
        services.AddSingleton<ZeroLedger>();
        services.AddSingleton<IZeroStore>(provider => provider.GetRequiredService<ZeroLedger>());
        services.AddSingleton(provider => new NoiseLedger(provider.GetRequiredService<LedgerDatabase>(), bay.Bay, time));
        services.AddSingleton(new RockingPrior(CarRocking.DirectionOf(bay.Car)));
        services.AddSingleton<CarShelf>();
        services.AddSingleton<StandingCar>();
        services.AddSingleton<CarRocking>();
        services.AddSingleton<PatchDesk>();
        services.AddSingleton(provider => new SiteCheckLedger(provider.GetRequiredService<LedgerDatabase>(), bay.Bay));
        services.AddSingleton<SiteCheckDesk>();
        services.AddSingleton<LivePatch>();
        services.AddSingleton<InclinometerZeroLedger>();
        services.AddSingleton<InclinometerZeroDesk>();
        services.AddSingleton<InclinometerZeroMapping>();
        services.AddSingleton(Weigher);
        services.AddSingleton<SessionLedger>();
        services.AddSingleton<SessionDesk>();
        services.AddSingleton<SessionBars>();
        services.AddSingleton<TargetNow>();
        services.AddSingleton<SessionTarget>();
        services.AddSingleton<ReadingTaker>();
        services.AddSingleton<SessionStarter>();
        services.AddSingleton<SessionNow>();
        services.AddSingleton<SessionAnswer>();
        services.AddSingleton<SheetDesk>();
        services.AddSingleton<AskedReader>();
        services.AddSingleton<PatchMapping>();
        services.AddSingleton<ZeroTaking>();
        services.AddSingleton<CalibrationLedger>();
        services.AddSingleton<ProcedureLedger>();
        services.AddSingleton<ProcedureDesk>();
        services.AddSingleton<CalibrationShelf>();
        services.AddSingleton(provider => new InterchangeLedger(provider.GetRequiredService<LedgerDatabase>(), bay.Bay));
        services.AddSingleton<PlacementTaker>();
        services.AddSingleton<InterchangeDesk>();
        services.AddSingleton<InterchangeMapping>();
        services.AddSingleton<ProcedureMapping>();
        services.AddSingleton(provider => new PadRecords(provider.GetRequiredService<IZeroStore>(), provider.GetRequiredService<CalibrationLedger>(), bay.Place) { InclinometerZeros = provider.GetRequiredService<InclinometerZeroLedger>() });
        services.AddSingleton(new PortLocks(bay.Bay, time));
        services.AddSingleton<ILinkFactory, LinkFactory>();
        services.AddSingleton<Func<ClockTrust>>(KernelClock.Ask);
        services.AddSingleton<ClockWatch>();
        services.AddHostedService(provider => provider.GetRequiredService<ClockWatch>());
        services.AddHostedService<DamageNotice>();
        services.AddSingleton(provider => new LiveBay(
            [.. bay.Pads.Select(p => new PadChannel(p, provider.GetRequiredService<BayClock>(), provider.GetRequiredService<PadRecords>()))]));
        services.AddSingleton<ApiMapping>();
        services.AddSingleton(new BrokerState(bay.Mqtt));
        services.AddSingleton<BrokerCounts>();
        services.AddSingleton<PadsList>();
        services.AddSingleton<OpeningPage>();
        services.AddMqtt(bay);
        services.AddRecorder(bay);
        services.AddHostedService<PadFaultLog>();
        services.AddHostedService<LinkService>();
        services.AddHostedService<WeighingLoop>();
        services.AddHostedService<ZeroKeeping>();
        services.AddHostedService<SiteCheckKeeping>();
    }

    private static OpenedLedger OpenLedger(HolderLock _, string path, TimeProvider time) => LedgerOpening.OrSay(path, () => LedgerOpening.Open(path, time.GetUtcNow()));

    // Whoever keeps car and prior in step with what is done has to be there before the first block is weighed.
    private static BayWeigher Weigher(IServiceProvider provider)
    {
        provider.GetRequiredService<SessionBars>();
        provider.GetRequiredService<SessionTarget>();
        provider.GetRequiredService<CarRocking>();
        // What cannot be read of the sheets is named from the start, not when somebody first asks.
        provider.GetRequiredService<SheetDesk>();
        return new BayWeigher(provider.GetRequiredService<LiveBay>().Pads, provider.GetRequiredService<BayConfiguration>().Weigh,
            provider.GetRequiredService<RockingPrior>(), provider.GetRequiredService<LivePatch>().Correct, provider.GetRequiredService<NoiseLedger>().Recall());
    }

    // Before the links: what is wrong with them from the start is to be seen.
    private static void AddRecorder(this IServiceCollection services, BayConfiguration bay)
    {
        services.AddSingleton(bay.Recorder);
        services.AddSingleton<RecordingFolder>();
        services.AddSingleton<FlightRecorder>();
        services.AddHostedService<FaultRecordings>();
    }

    private static void AddMqtt(this IServiceCollection services, BayConfiguration bay)
    {
        if (bay.Mqtt.Broker == BrokerKind.Off)
            return;
        services.AddSingleton(bay.Mqtt);
        services.AddSingleton<BrokerPass>();
        services.AddSingleton(new MqttTopics(bay.Bay));
        services.AddSingleton<MqttMapping>();
        services.AddSingleton<MqttSessionMapping>();
        services.AddSingleton<MqttSessionPublisher>();
        if (bay.Mqtt.Broker == BrokerKind.Embedded)
            services.AddHostedService<EmbeddedBroker>();
        services.AddHostedService<MqttPublisher>();
    }
}
