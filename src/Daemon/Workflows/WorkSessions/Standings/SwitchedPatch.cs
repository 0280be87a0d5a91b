using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.WorkSessions.Learning;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Standings;

/// <summary>
/// What switching corrections of the patch does to the readings of a session. The car stands as it stood; the corrections' sizes are on record
/// with each reading, so that readings are compared as if the corrections of the later one had been on all the time.
/// </summary>
internal static class SwitchedPatch
{
    // Sizes that differ by less belong to the same corrections.
    private const double SameKg = 0.001;

    /// <summary>Whether two readings were corrected alike.</summary>
    public static bool IsSame(RecordedWeighing one, RecordedWeighing other) =>
        Corners.All.ToArray().All(c => Math.Abs(one.PatchKg[c] - other.PatchKg[c]) <= SameKg);

    /// <summary>What is known of the car, as a reading with these corrections shows it.</summary>
    public static StepLearner KnownAs(this WorkSession session, RecordedWeighing now) => session.Known!.Shifted(Added(session, now));

    /// <summary>What the corrections of this reading add to the cross weight of the one before, percent.</summary>
    public static double CrossWeightPercent(WorkSession session, RecordedWeighing now)
    {
        var last = session.Weighings[^1].Step.Reading.ForSteps;
        return new LoadSummary(last.Loads + Added(session, now), last.Covariance).CrossWeightPercent.Estimate - last.CrossWeightPercent.Estimate;
    }

    private static Corners Added(WorkSession session, RecordedWeighing now)
    {
        var last = session.Weighings[^1].Step.Reading;
        return IsSame(last, now) ? default : now.PatchKg - last.PatchKg;
    }
}
