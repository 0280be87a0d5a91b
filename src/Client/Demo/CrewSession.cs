using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Demo;

/// <summary>The crew's work session with the daemon: what was read and turned goes on record, what to turn next comes from it.</summary>
internal sealed class CrewSession(DaemonConnection daemon)
{
    public const string Who = "demo crew";

    // A simulated car has neither tyre gauges nor scales for its driver; its bars stay connected, which the plan counts with.
    private static readonly string[] LeftOut =
    [
        "tyre_pressures", "rolling_circumference", "fuel", "driver_mass", "bars_disconnected", "steering_straight", "pads_proved", "patch_level",
    ];

    private static StepBy By => new() { Who = Who };

    public async Task Start(CancellationToken stop)
    {
        var request = new StartSessionRequest { By = By, Title = "Bramble Moor, the demo" };
        request.LeaveOut.AddRange(LeftOut);
        await daemon.Ask(o => daemon.WorkSessionControl.StartSessionAsync(request, o), stop);
    }

    public async Task Weighing(CancellationToken stop)
    {
        var session = await daemon.Ask(o => daemon.WorkSessionControl.WeighAsync(new WeighRequest { By = By }, o), stop);
        // Nobody but this crew touches the car: what changed without a turn was the settling.
        if (session.State == SessionState.Naming)
            await daemon.Ask(o => daemon.WorkSessionControl.NameChangeAsync(new NameChangeRequest { By = By, Nothing = true }, o), stop);
    }

    /// <summary>What to turn next, recorded as being turned; nothing when another settle is worth more.</summary>
    public async Task<PerchPlan?> Next(CancellationToken stop)
    {
        var plan = await daemon.Ask(o => daemon.WorkSessions.PlanTurnsAsync(new PlanTurnsRequest { Refine = true }, o), stop);
        if (plan.Turns is not { } turns || turns.Equals(new CornerNumbers()))
            return null;
        await daemon.Ask(o => daemon.WorkSessionControl.RecordAdjustmentAsync(new RecordAdjustmentRequest { By = By, Turns = turns }, o), stop);
        return plan;
    }
}
