using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Board.Device;
using ScaleLink.Board.Operating;

namespace ScaleLink.Board.PadInterchange;

/// <summary>The pads interchanged under one car, as this page follows it and asks for its steps. Each is on record by the time it is answered.</summary>
internal sealed class InterchangeSteps(PadInterchanges.PadInterchangesClient interchanges, PadInterchangeControl.PadInterchangeControlClient control, DeviceSettings settings, Asking asking, Asking looking)
{
    private int _answered;
    private (string Id, InterchangeState State)? _listed;

    /// <summary>The newest as last seen; absent before the first look.</summary>
    public InterchangeView? View { get; private set; }

    /// <summary>Those before the newest that have ended, newest first.</summary>
    public IReadOnlyList<InterchangeView> Earlier { get; private set; } = [];

    /// <summary>The daemon did not answer the last look: what is seen is old.</summary>
    public bool IsHeld { get; private set; }

    public bool IsAtWork => asking.IsAtWork;

    /// <summary>Why the last step was refused.</summary>
    public Diagnostic? Trouble => asking.Trouble;

    public bool IsUnderWay => View?.State is InterchangeState.Measuring or InterchangeState.Review;

    public async Task Look()
    {
        var before = _answered;
        var view = await looking.Ask(stop => interchanges.GetInterchangeAsync(new GetInterchangeRequest(), cancellationToken: stop));
        IsHeld = view is null;
        // A look that began before a step was answered knows nothing of it.
        if (view is not null && before == _answered)
            await Take(view);
    }

    public Task Record() => Step(stop => control.RecordPlacementAsync(new RecordPlacementRequest { Who = Who }, cancellationToken: stop));

    public Task ThrowAway(uint number) => Step(stop => control.ThrowPlacementAwayAsync(new ThrowPlacementAwayRequest { Number = number, Who = Who }, cancellationToken: stop));

    public Task Finish(string note) => Step(stop => control.FinishInterchangeAsync(new FinishInterchangeRequest { Who = Who, Note = note }, cancellationToken: stop));

    public Task Abandon(string reason) => Step(stop => control.AbandonInterchangeAsync(new AbandonInterchangeRequest { Who = Who, Reason = reason }, cancellationToken: stop));

    private string Who => settings.Who.Trim();

    private async Task Step(Func<CancellationToken, AsyncUnaryCall<InterchangeView>> call)
    {
        var view = await asking.Ask(call);
        _answered++;
        if (view is not null)
            await Take(view);
    }

    // The list is long and changes only when one begins or ends.
    private async Task Take(InterchangeView view)
    {
        View = view;
        if (_listed == (view.InterchangeId, view.State))
            return;
        if (await looking.Ask(stop => interchanges.ListInterchangesAsync(new ListInterchangesRequest(), cancellationToken: stop)) is not { } list)
            return;
        _listed = (view.InterchangeId, view.State);
        Earlier = [.. list.PadInterchanges.Where(r => r.EndedAt is not null && r.InterchangeId != view.InterchangeId)];
    }
}
