using ScaleLink.Daemon.Workflows.Cars;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Tells the car in the bay while a session has its bars off.</summary>
internal sealed class SessionBars
{
    public SessionBars(SessionDesk desk, StandingCar car)
    {
        desk.Changed += Follow;
        Follow();

        // The bars that a session speaks of are those of its own car.
        void Follow() => car.WithoutBars(desk.Current?.Session is { BarsAreOffNow: true } session ? session.Start.CarHash : null);
    }
}
