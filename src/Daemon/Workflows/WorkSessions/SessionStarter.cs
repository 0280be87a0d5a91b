using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.WorkSessions.Checks;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>What a new session begins with: the car in the bay, its target, and what its earlier sessions taught about settling.</summary>
internal sealed class SessionStarter(CarShelf cars, SessionLedger sessions, BayConfiguration bay)
{
    public SessionStarted Start(string title, double? targetPercent, double? tolerancePercent, IReadOnlyList<string> leaveOut, IReadOnlyList<string> actions)
    {
        var car = cars.InBay ?? throw new StepRefusedException(CarCodes.NoCarInBay, "No car is chosen for this bay.", "Choose one: Car on the page, or scalelink car use FILE.");
        var (target, tolerance) = (targetPercent ?? car.Model.Targets.CrossWeightPercent, tolerancePercent ?? car.Model.Targets.CrossWeightTolerancePercent);
        if (!(target is >= 30 and <= 70 && tolerance is > 0 and <= 10))
            throw new StepRefusedException(SessionCodes.InputUnusable, $"The target is {target} % within {tolerance} %.", "Give (RF + LR) / total in percent, 30 to 70, and a tolerance above 0 up to 10.");
        if (leaveOut.FirstOrDefault(k => !CheckLists.Keys.Contains(k)) is { } unknown)
            throw new StepRefusedException(SessionCodes.NoSuchCheck, $"There is no check {unknown}.", $"Checks: {string.Join(", ", CheckLists.Keys)}.");
        var earlier = sessions.All().Where(s => s.Car.Name == car.Model.Name && s.End is { Abandoned: false }).ToList();
        return new(bay.Bay, car.Hash, car.File, title, target, tolerance, leaveOut, MethodOf(earlier, actions), LastValues(earlier));
    }

    // Nothing where nothing was ever entered, so that the record of a first session stays as short as it was.
    private static Dictionary<string, string>? LastValues(IReadOnlyList<WorkSession> earlier)
    {
        var values = earlier.SelectMany(s => s.Marks.Where(m => m.Value is { Done: true, Value.Length: > 0 })).GroupBy(m => m.Key).ToDictionary(m => m.Key, m => m.Last().Value.Value);
        return values.Count > 0 ? values : null;
    }

    private static SettleMethod MethodOf(List<WorkSession> earlier, IReadOnlyList<string> actions)
    {
        var groups = earlier.SelectMany(s => SettleGroups.Of(s.Weighings)).ToList();
        var repeatability = SettleGroups.Pool(groups, SettleGroups.Unknown);
        var usual = actions.Count > 0 ? actions : earlier.LastOrDefault()?.Start.SettleMethod.Actions ?? SettleMethod.RollAndBounce;
        return new(usual, repeatability.Percent, repeatability.DegreesOfFreedom, groups.Where(g => g.Count > 1).Sum(g => g.Count));
    }
}
