using System.Text.Json;
using System.Threading.Channels;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>Carries the bay to a broker: birth, live loads, changes of pads, goodbye. A broken connection is made anew for ever.</summary>
internal sealed class MqttPublisher(MqttConfiguration configuration, MqttTopics topics, MqttMapping mapping, MqttSessionPublisher work, BrokerPass pass, BrokerState state, LiveBay bay, TargetNow target, TimeProvider time, ILogger<MqttPublisher> log)
    : BackgroundService
{
    private static readonly TimeSpan PingEvery = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan RetryAfter = TimeSpan.FromSeconds(2);
    private const int QueuedReadings = 20;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        string? said = null;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await Connected(() => said = null, stoppingToken);
            }
            catch (Exception e) when (!stoppingToken.IsCancellationRequested)
            {
                if (said != e.Message)
                    log.LogWarning("Broker {Host}:{Port} is lost: {Why}. Trying again every {Seconds} s. ({Code})", configuration.Host, configuration.Port, e.Message, RetryAfter.TotalSeconds, ServiceCodes.BrokerLost);
                said = e.Message;
                state.Lost(e.Message);
            }
            catch (OperationCanceledException)
            {
                return;
            }

            await Task.Delay(RetryAfter, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task Connected(Action onBirth, CancellationToken stop)
    {
        var will = JsonSerializer.SerializeToUtf8Bytes(mapping.Will(), MqttJson.Plain.MqttState);
        await using var connection = await MqttConnection.Open(configuration, pass, topics.State, will, time, stop);
        await connection.Retain(topics.Config, mapping.Config(), MqttJson.Plain.MqttConfig, stop);
        await connection.Retain(topics.State, mapping.Online(), MqttJson.Plain.MqttState, stop);
        state.Connected();
        onBirth();
        log.LogInformation("Publishing to broker {Host}:{Port} under {Topic}", configuration.Host, configuration.Port, topics.Loads);

        using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var pumps = new[] { PumpLoads(connection, end.Token), PumpPads(connection, end.Token), PumpTarget(connection, end.Token), work.Pump(connection, end.Token), PumpPings(connection, end.Token) };
        var first = await Task.WhenAny(pumps);
        await end.CancelAsync();
        await Task.WhenAll(pumps).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (stop.IsCancellationRequested)
            await Leave(connection);
        else
            await first;
    }

    private async Task PumpLoads(MqttConnection connection, CancellationToken stop)
    {
        var pace = new Pace(configuration.RateHz);
        using var subscription = bay.Readings.Subscribe(QueuedReadings);
        await foreach (var reading in subscription.Items.ReadAllAsync(stop))
        {
            if (pace.IsDue(reading))
                await connection.Stream(topics.Loads, mapping.Loads(reading, pace.MaxAgeMs), MqttJson.Plain.MqttLoads, pace.MaxAgeMs / 1000, stop);
        }
    }

    private Task PumpPads(MqttConnection connection, CancellationToken stop)
    {
        return Pump(note => Each(p => p.Changed += note), note => Each(p => p.Changed -= note), async () =>
        {
            foreach (var pad in bay.Pads)
                await connection.Retain(topics.Pad(pad.Corner), mapping.Pad(pad.Snapshot()), MqttJson.Plain.MqttPad, stop);
        }, stop);

        void Each(Action<PadChannel> what)
        {
            foreach (var pad in bay.Pads)
                what(pad);
        }
    }

    // Retained once already: whoever comes later finds what is aimed for by then.
    private Task PumpTarget(MqttConnection connection, CancellationToken stop) =>
        Pump(note => target.Changed += note, note => target.Changed -= note, () => connection.Retain(topics.Config, mapping.Config(), MqttJson.Plain.MqttConfig, stop), stop);

    // Once at the beginning, for what changed before anybody listened, and after each change; one that is still to be told is enough.
    private static async Task Pump(Action<Action> listen, Action<Action> leave, Func<Task> publish, CancellationToken stop)
    {
        var changes = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
        void Note() => changes.Writer.TryWrite(true);
        listen(Note);
        try
        {
            Note();
            await foreach (var _ in changes.Reader.ReadAllAsync(stop))
                await publish();
        }
        finally
        {
            leave(Note);
        }
    }

    private async Task PumpPings(MqttConnection connection, CancellationToken stop)
    {
        using var timer = new PeriodicTimer(PingEvery, time);
        while (await timer.WaitForNextTickAsync(stop))
            await connection.Ping(stop);
    }

    private async Task Leave(MqttConnection connection)
    {
        await connection.Retain(topics.State, mapping.Stopping(), MqttJson.Plain.MqttState, CancellationToken.None);
        await connection.Close();
    }
}
