using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Board.Device;

namespace ScaleLink.Board.Operating;

/// <summary>The pads moved round under one car, as this page follows it and asks for its steps. Each is on record by the time it is answered.</summary>
internal sealed class RotationSteps(Rotations.RotationsClient rotations, RotationControl.RotationControlClient control, DeviceSettings settings, Asking asking, Asking looking)
{
    private int _answered;
    private (string Id, RotationState State)? _listed;

    /// <summary>The newest as last seen; absent before the first look.</summary>
    public RotationView? View { get; private set; }

    /// <summary>Those before the newest that have ended, newest first.</summary>
    public IReadOnlyList<RotationView> Earlier { get; private set; } = [];

    /// <summary>The daemon did not answer the last look: what is seen is old.</summary>
    public bool IsHeld { get; private set; }

    public bool IsAtWork => asking.IsAtWork;

    /// <summary>Why the last step was refused.</summary>
    public Diagnostic? Trouble => asking.Trouble;

    public bool IsUnderWay => View?.State is RotationState.Measuring or RotationState.Review;

    public async Task Look()
    {
        var before = _answered;
        var view = await looking.Ask(stop => rotations.GetRotationAsync(new GetRotationRequest(), cancellationToken: stop));
        IsHeld = view is null;
        // A look that began before a step was answered knows nothing of it.
        if (view is not null && before == _answered)
            await Take(view);
    }

    public Task Record() => Step(stop => control.RecordPlacementAsync(new RecordPlacementRequest { Who = Who }, cancellationToken: stop));

    public Task ThrowAway(uint number) => Step(stop => control.ThrowPlacementAwayAsync(new ThrowPlacementAwayRequest { Number = number, Who = Who }, cancellationToken: stop));

    public Task Finish(string note) => Step(stop => control.FinishRotationAsync(new FinishRotationRequest { Who = Who, Note = note }, cancellationToken: stop));

    public Task Abandon(string reason) => Step(stop => control.AbandonRotationAsync(new AbandonRotationRequest { Who = Who, Reason = reason }, cancellationToken: stop));

    private string Who => settings.Who.Trim();

    private async Task Step(Func<CancellationToken, AsyncUnaryCall<RotationView>> call)
    {
        var view = await asking.Ask(call);
        _answered++;
        if (view is not null)
            await Take(view);
    }

    // The list is long and changes only when one begins or ends.
    private async Task Take(RotationView view)
    {
        View = view;
        if (_listed == (view.RotationId, view.State))
            return;
        if (await looking.Ask(stop => rotations.ListRotationsAsync(new ListRotationsRequest(), cancellationToken: stop)) is not { } list)
            return;
        _listed = (view.RotationId, view.State);
        Earlier = [.. list.Rotations.Where(r => r.EndedAt is not null && r.RotationId != view.RotationId)];
    }
}
