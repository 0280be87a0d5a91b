using ScaleLink.Api.V1;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Device;

namespace ScaleLink.Board.WorkSessions;

/// <summary>
/// For hands that are in the wheel house, where a device was told so: says the next step and the settled loads, and takes steps by two keys, which a foot
/// switch sends. Runs beside all pages.
/// </summary>
internal sealed class HandsFree(BayFeed feed, Heartbeat heartbeat, SessionSteps steps, DeviceSettings settings) : IDisposable
{
    private string _saidNext = "";
    private bool _wasReady;

    public void Start()
    {
        heartbeat.Looked += Look;
        Browser.WatchKeys(Press);
        Browser.WatchVisibility(isSeen => Browser.Awake(isSeen && settings.StaysAwake));
        Browser.Awake(settings.StaysAwake);
    }

    public void Dispose() => heartbeat.Looked -= Look;

    /// <summary>Settled loads as they are said: cross weight first.</summary>
    internal static string Loads(Loads loads, Unit unit) => Spoken.Of(string.Join(". ", [
        $"Settled. Cross weight {ValueText.Of(loads.CrossWeightPercent.AsValue, Unit.Percent).Alone} %",
        .. loads.Corners.Where(c => c.LoadKg is not null).Select(c => $"{c.Corner.Name()} {ValueText.Live(c.LoadKg.AsValue, unit).Alone}")])) + ".";

    private void Look(BayView view)
    {
        var ready = view.Loads.Live is { WeighingReady: true, CrossWeightPercent: not null } live ? live : null;
        var next = view.WorkSessions.Live?.Session is { } session && session.State.IsOpen() ? session.Next : "";
        if (settings.Speaks && ready is not null && !_wasReady)
            Browser.Say(Loads(ready, settings.Unit));
        else if (settings.Speaks && next.Length > 0 && next != _saidNext)
            Browser.Say(Spoken.Of(next));
        (_wasReady, _saidNext) = (ready is not null, next);
    }

    // Whether the key was ours. What becomes of the step shows on the page, as of one that was pressed there.
    private bool Press(string code)
    {
        if (!settings.HasSwitch || !settings.HasName || feed.View is not { WorkSessions.Live.Session: { } session } view || !session.State.IsOpen())
            return false;
        var isUndo = code == settings.UndoKey && session.OpenAdjustments.Count > 0;
        if (!isUndo && code != settings.NextKey)
            return false;
        _ = (isUndo, session.StepNow()) switch
        {
            (true, _) => steps.Undo(),
            (_, CrewStep.Turn) => steps.TurnAsPlanned(),
            (_, CrewStep.Weigh) when view.Loads.Live?.WeighingReady == true => steps.Weigh(null, ""),
            (_, CrewStep.Weigh) => Tell("Not settled yet."),
            _ => Tell(Spoken.Of(session.Next)),
        };
        return true;
    }

    // Somebody who cannot look wants to know that nothing was done.
    private Task Tell(string why)
    {
        if (settings.Speaks)
            Browser.Say(why);
        return Task.CompletedTask;
    }
}
