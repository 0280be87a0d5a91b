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
        var next = view.WorkSessions.Live?.Session is { } session && session.State.IsOpen() ? session.Next.ToString() : "";
        if (settings.Speaks && ready is not null && !_wasReady)
            Browser.Say(Loads(ready, settings.Unit));
        else if (settings.Speaks && next.Length > 0 && next != _saidNext)
            Browser.Say(Spoken.Of(next));
        (_wasReady, _saidNext) = (ready is not null, next);
    }

    private bool Press(string code)
    {
        if (!settings.HasSwitch || !settings.HasName || feed.View is not { WorkSessions.Live.Session: { } session } view || !session.State.IsOpen())
            return false;
        if (code == settings.UndoKey && session.OpenAdjustments.Count > 0)
            return Take(steps.Undo());
        if (code != settings.NextKey)
            return false;
        switch (session.StepNow())
        {
            case CrewStep.Turn:
                return Take(steps.TurnAsPlanned());
            case CrewStep.Weigh when view.Loads.Live?.WeighingReady == true:
                return Take(steps.Weigh(null, ""));
            default:
                // Somebody who cannot look wants to know that nothing was done.
                if (settings.Speaks)
                    Browser.Say(session.StepNow() == CrewStep.Weigh ? "Not settled yet." : Spoken.Of(session.Next.ToString()));
                return true;
        }
    }

    // The answer, or the refusal, shows on the page.
    private static bool Take(Task step) => step is not null;
}
