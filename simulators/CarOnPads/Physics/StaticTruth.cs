namespace CarOnPads.Physics;

/// <summary>
/// The loads the car comes to rest at, when everything already asked for has happened and nobody touches it again.
/// Without friction and scrub that is one Newton solution of the wanted configuration. With them the past matters:
/// a copy of the car is run ahead until it is still, then Newton's method takes out the last trembling with the
/// friction stuck where it stopped.
/// </summary>
static class StaticTruth
{
    const double Still = 1e-6;        // m/s
    const double LongestWait = 180;   // s of simulated time
    static readonly int s_window = (int)(0.1 / CarDynamics.Step);

    /// <summary>The motion at rest; its loads in N are the truth.</summary>
    public static Motion Of(Rig rig)
    {
        var ahead = rig.Copy();
        if (ahead.Rubs || ahead.Scrubs)
            WaitUntilStill(ahead);
        else
            ahead.FinishMovements();
        return ahead.Rest();
    }

    static void WaitUntilStill(Rig rig)
    {
        var latest = rig.Time + LongestWait;
        double speed;
        do
        {
            speed = 0;
            for (var i = 0; i < s_window; i++)
            {
                rig.Advance();
                speed = Math.Max(speed, rig.Motion.Speed);
            }
        }
        while ((speed > Still || rig.Busy) && rig.Time < latest);
    }
}
