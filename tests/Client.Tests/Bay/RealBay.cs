using System.Text.Json;
using Client.Tests.Terminal;
using ScaleLink.Api.V1;
using ScaleLink.Client;
using ScaleLink.Client.Demo;

namespace Client.Tests.Bay;

/// <summary>The real daemon and the real simulator as processes, joined by pseudo-terminals; the car raised, the pads without a zero.</summary>
public sealed class RealBay : IAsyncLifetime
{
    private const int MostZeros = 30;

    // Four seconds of samples: rest is judged over two, and the first are still being placed in time.
    private const int FramesAtRest = 4 * 320;

    public const string WhyNot = "Pseudo-terminals: Linux and macOS only.";

    internal DemoBay Bay { get; private set; } = null!;

    public static bool HasPseudoTerminals => !OperatingSystem.IsWindows();

    internal string Address => $"http://127.0.0.1:{Bay.Ports.Grpc}";

    public async ValueTask InitializeAsync()
    {
        if (!HasPseudoTerminals)
            return;
        Bay = await DemoBay.Start(new DemoSetup { Ports = new Ports(0, 0, 0), Seed = 7 }, TimeProvider.System, CancellationToken.None);
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (!(await Bay.Daemon.Ask(o => Bay.Daemon.Pads.ListPadsAsync(new ListPadsRequest(), o), patience.Token)).Pads.All(p => p is { State: PadState.Live, MeasuredRateHz: > 300, Counters.Frames: > FramesAtRest }))
            await Task.Delay(100, patience.Token);
    }

    public async ValueTask DisposeAsync()
    {
        if (Bay is not null)
            await Bay.DisposeAsync();
    }

    /// <summary>Runs a command of the client against this bay; gives its exit code and what it wrote.</summary>
    internal async Task<(int Code, string Output, string Error)> Run(params string[] arguments)
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        var code = await CommandLine.Run(["--daemon", Address, .. arguments], Shells.Redirected(output, error), TestContext.Current.CancellationToken);
        return (code, output.ToString(), error.ToString());
    }

    /// <summary>Zeroes the empty pads, again and again as people do: the noise of a moment refuses a pad.</summary>
    internal async Task Zero()
    {
        for (var tries = 1; ; tries++)
        {
            var (code, output, error) = await Run("zero", "--who", "crew");
            if (code == 0)
                return;
            Assert.True(tries < MostZeros, $"zero: {output}{error}");
            await Task.Delay(TimeSpan.FromSeconds(1), TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Zeroes and lowers the car where no test before has: any test can be run by itself.</summary>
    internal async Task Stands()
    {
        var cancel = TestContext.Current.CancellationToken;
        if ((await Bay.Daemon.Ask(o => Bay.Daemon.Pads.ListPadsAsync(new ListPadsRequest(), o), cancel)).Pads.All(p => p.Zero is not null))
            return;
        await Zero();
        await Task.Delay(await Bay.Car.Lower(cancel), cancel);
        await Task.Delay(await Bay.Car.Settle(1.5, roll: true, cancel), cancel);
    }

    /// <summary>The first settled reading that fits, as the watching command tells it.</summary>
    internal async Task<JsonElement> Settled(Func<JsonElement, bool> fits)
    {
        for (var tries = 0; tries < 60; tries++)
        {
            var (_, output, _) = await Run("watch", "--json", "--seconds", "1");
            foreach (var line in output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Reverse())
                if (JsonDocument.Parse(line).RootElement.TryGetProperty("reading", out var reading) && reading.GetProperty("verdict").GetString() == "settled" && fits(reading))
                    return reading;
        }

        throw new InvalidOperationException("The car does not settle.");
    }
}
