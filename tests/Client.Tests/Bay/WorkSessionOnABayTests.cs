using System.Text.Json;
using Client.Tests.Terminal;
using ScaleLink.Client;

namespace Client.Tests.Bay;

/// <summary>A work session by the commands alone, against the real daemon and the simulated car.</summary>
[Trait("needs", "bay")]
public class WorkSessionOnABayTests(RealBay bay) : IClassFixture<RealBay>
{
    private const int MostReadings = 7;

    public static bool Can => RealBay.HasPseudoTerminals;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task From_the_prepared_car_to_the_printed_sheet()
    {
        await bay.Zero();
        Assert.Contains("* Heron", await Done("car", "list"));
        Assert.Contains("SL-560", (await bay.Run("work-session", "weigh")).Error);
        Assert.Contains("Now: Preparation:", await Done("work-session", "start", "--title", "commands", "--leave-out", "tyre_pressures", "rolling_circumference", "fuel", "driver_mass", "steering_straight", "pads_proved", "patch_level"));
        Assert.Contains("Nobody under a car that hangs on a jack", await Done("work-session", "cautions"));
        await Done("work-session", "cautions-read", "--who", "Ben");
        Assert.EndsWith("Read by Ben.", (await Done("work-session", "cautions")).TrimEnd());
        Assert.Contains("weigh the baseline", await Done("work-session", "check", "bars_disconnected", "--skip", "they stay on today"));
        await Task.Delay(await bay.Bay.Car.Lower(Cancel), Cancel);
        var session = await Reading();
        for (var readings = 0; State(session) == "SESSION_STATE_PLANNING" && readings < MostReadings; readings++)
        {
            using var plan = JsonDocument.Parse(await Done("plan", "--json"));
            if (!plan.RootElement.GetProperty("already_there").GetBoolean())
                await Turn(plan.RootElement.GetProperty("turns"));
            session = await Reading();
        }

        Assert.Equal("SESSION_STATE_FINISHING", State(session));
        Assert.InRange(session.GetProperty("standing").GetProperty("cross_weight_percent").GetProperty("estimate").GetDouble(), 49.8, 50.2);
        await Screen();
        for (var more = 0; Verdict(session) != "AIM_VERDICT_ON_TARGET" && more < MostReadings; more++)
        {
            Assert.Contains("SL-566", (await bay.Run("work-session", "finish")).Error);
            session = await Reading();
        }

        foreach (var check in new[] { "lock_rings", "bump_and_droop", "alignment" })
            await Done("work-session", "check", check);
        Assert.Contains("finished: ", await Done(["work-session", "finish", .. Verdict(session) == "AIM_VERDICT_ON_TARGET" ? Array.Empty<string>() : ["--anyway", "no number of settles decides it"]]));
        await Records(session.GetProperty("id").GetString()!);
    }

    private static string Verdict(JsonElement session) => session.GetProperty("standing").GetProperty("verdict").GetString()!;

    private async Task<JsonElement> Reading()
    {
        await Task.Delay(await bay.Bay.Car.Settle(1.5, roll: true, Cancel), Cancel);
        var (code, output, error) = await bay.Run("work-session", "weigh", "--wait", "20", "--json");
        Assert.True(code == 0, output + error);
        return JsonDocument.Parse(output).RootElement;
    }

    private async Task Turn(JsonElement turns)
    {
        // Turned by hand: every fraction has to be readable.
        Assert.DoesNotContain('?', await Done("plan"));
        Assert.Contains("Expected on the next reading: cross weight", await Done("work-session", "turn", "--as-planned"));
        foreach (var corner in new[] { "LF", "RF", "LR", "RR" })
            if (turns.GetProperty(corner.ToLowerInvariant()).GetDouble() is var by and not 0)
                await Task.Delay(await bay.Bay.Car.Turn(corner, by, Cancel), Cancel);
    }

    private async Task Screen()
    {
        var output = new StringWriter();
        Assert.Equal(0, await CommandLine.Run(["work-session", "--seconds", "1.5", "--daemon", bay.Address], Shells.Terminal(output), Cancel));
        Assert.Contains("LAST STEPS", output.ToString());
        Assert.Contains("lock_rings", output.ToString());
        Assert.EndsWith("\e[?25h\e[?1049l", output.ToString());
    }

    private async Task Records(string id)
    {
        Assert.Contains(id, await Done("work-session", "list"));
        Assert.Contains("predicted", await Done("work-session", "show", id));
        Assert.Contains("standing_cross_weight_percent", await Done("work-session", "compare", id, id));
        Assert.Contains("<svg", await Done("work-session", "export", id, "--out", "-"));
        Assert.Contains("\r\nnumber,time,who", await Done("work-session", "export", id, "--format", "csv", "--out", "-"));
        Assert.Contains("SL-567", (await bay.Run("work-session", "show", "no-such")).Error);
    }

    private async Task<string> Done(params string[] arguments)
    {
        var (code, output, error) = await bay.Run(arguments);
        Assert.True(code == 0, $"{string.Join(' ', arguments)}: {output}{error}");
        return output;
    }

    private static string State(JsonElement session) => session.GetProperty("state").GetString()!;
}
