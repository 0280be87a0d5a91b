using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Tells every face what the open session, or else the car in the bay, aims for.</summary>
internal sealed class SessionTarget
{
    public SessionTarget(SessionDesk desk, CarShelf cars, TargetNow target)
    {
        desk.Changed += FollowSession;
        cars.Changed += FollowCar;
        FollowCar();
        FollowSession();

        void FollowSession() => target.OfSession(desk.Current?.Session.Start is { } start ? new TargetBand(start.TargetPercent, start.TolerancePercent) : null);

        void FollowCar() => target.OfCar(cars.InBay?.Model.Targets is { } targets ? new TargetBand(targets.CrossWeightPercent, targets.CrossWeightTolerancePercent) : null);
    }
}
