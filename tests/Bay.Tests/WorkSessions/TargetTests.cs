using Bay.Tests.Brokers;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.WorkSessions;

/// <summary>What is aimed for is one target on every face: the open session's, else that of the car in the bay, else the bay file's. The project's own requirement.</summary>
[Trait("needs", "bay")]
public sealed class TargetTests
{
    private const string Config = "scalelink/v1/unit6/config";

    [Fact]
    public void The_open_session_goes_before_the_car_and_the_car_before_the_bay_file()
    {
        // Its bay file says 50.0 within 0.2.
        using var bay = new BayRig();
        bay.WaitLive();
        using var reader = Reader(bay);
        Holds(bay, reader, 50, 0.2);

        var heron = File.ReadAllText(Shared.RepositoryRoot.File("docs", "cars", "heron.json"));
        bay.Daemon.CarControl.SaveCar(new SaveCarRequest { File = heron.Replace("\"cross_weight_percent\": 50.0", "\"cross_weight_percent\": 50.5", StringComparison.Ordinal), Who = "test" });
        bay.Daemon.CarControl.UseCar(new UseCarRequest { Name = "Heron", Who = "test" });
        Holds(bay, reader, 50.5, 0.2);

        bay.Daemon.WorkSessionControl.StartSession(new StartSessionRequest { By = CrewAtWork.By, TargetCrossWeightPercent = 51, TargetTolerancePercent = 0.3 });
        Holds(bay, reader, 51, 0.3);
        // The session goes on after a restart, and so does its target.
        bay.RestartDaemon();
        bay.WaitLive();
        using var again = Reader(bay);
        Holds(bay, again, 51, 0.3);

        bay.Daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = CrewAtWork.By, Because = "seen enough" });
        Holds(bay, again, 50.5, 0.2);
        bay.Daemon.CarControl.ReleaseCar(new ReleaseCarRequest { Who = "test" });
        Holds(bay, again, 50, 0.2);
    }

    // The built-in broker is there a moment after the pads.
    private static TopicReader Reader(BayRig bay)
    {
        TopicReader? reader = null;
        Wait.Until(() =>
        {
            try
            {
                reader = new TopicReader(bay.MqttPort);
                return true;
            }
            catch (MQTTnet.Exceptions.MqttCommunicationException)
            {
                return false;
            }
        }, Wait.Patience, "the broker answers");
        return reader!;
    }

    private static void Holds(BayRig bay, TopicReader reader, double percent, double tolerance)
    {
        Target? seen = null;
        Wait.Until(() => (seen = bay.Daemon.Loads()?.Target) is { } target && target.CrossWeightPercent == percent && target.TolerancePercent == tolerance, Wait.Patience, () => $"target {percent} over gRPC; it is {seen}");
        Wait.Until(() => reader.Newest(Config) is { } config && config["target_cross_weight_percent"]?.GetValue<double>() == percent && config["target_tolerance_percent"]?.GetValue<double>() == tolerance,
            Wait.Patience, () => $"target {percent} over MQTT; it is {reader.Newest(Config)}");
    }
}
