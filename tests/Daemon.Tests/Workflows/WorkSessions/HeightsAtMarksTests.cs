using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>Heights of a session are those at the car's marks, carried on by what turns do there.</summary>
public class HeightsAtMarksTests
{
    [Fact]
    public void Turns_carry_heights_on_where_they_were_measured()
    {
        var (wheels, marks) = (After(Bench.CarText), After(Marked));
        // All marks on one line across, 700 mm behind the front axle of 2450, and 1750: own interpolation along each side, both tracks taken as 1500 mm.
        Assert.Equal(wheels.LF + (wheels.LR - wheels.LF) * 700 / 2450, marks.LF, 0.02);
        Assert.Equal(wheels.RF + (wheels.RR - wheels.RF) * 1750 / 2450, marks.RR, 0.02);
        Assert.True(wheels.LF > 91, "A front perch was turned up by two.");
    }

    // The same height everywhere, then two turns at LF.
    private static Corners After(string car)
    {
        using var bench = new Bench(Bench.Start() with { CarFile = car });
        bench.Prepare();
        bench.Weigh(Bench.FirstLoads);
        bench.Take(SessionRules.EnterHeights(bench.View, Corners.Same(90)));
        bench.Turn(new(2, 0, 0, 0));
        bench.Weigh(Bench.LoadsAfter(new(2, 0, 0, 0)));
        return bench.Session.HeightsNowMm!.Value;
    }

    private static string Marked => Bench.CarText.Replace("\"targets\":", """
        "ride_height_marks": {
          "LF": { "behind_front_axle_mm": 700, "left_of_centre_mm": 750 }, "RF": { "behind_front_axle_mm": 700, "left_of_centre_mm": -750 },
          "LR": { "behind_front_axle_mm": 1750, "left_of_centre_mm": 750 }, "RR": { "behind_front_axle_mm": 1750, "left_of_centre_mm": -750 }
        },
        "targets":
        """, StringComparison.Ordinal);
}
