using System.Globalization;
using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.Cars;

namespace ScaleLink.Client.Cars;

/// <summary>Asks what is needed of a car, one question a line, in the order in which a crew finds the answers.</summary>
internal sealed class CarInterview(Shell shell)
{
    private bool _isOver;

    /// <summary>The car; null when the input ended before the questions did.</summary>
    public CarModel? Run()
    {
        shell.WriteLine("A number, or a number and its uncertainty: 70 or 70 +-3. Enter alone: nobody knows. Motion ratio = spring travel / wheel travel.");
        var name = Text("Name of the car");
        var wheelbase = Ask("Wheelbase, mm", 0, 3);
        var (front, rear) = (Ask("Front track, mm", 0, 3), Ask("Rear track, mm", 0, 3));
        var (frontCorner, frontBar) = Axle("Front");
        var (rearCorner, rearBar) = Axle("Rear");
        var cg = Ask("Height of the centre of gravity with driver, mm", 0.06, 0, Stated.Guess(450, 100));
        var turn = Ask("Smallest turn that the lock ring holds (0.125, 0.25, 0.5)", 0, 0, Stated.Exactly(0.25)).Estimate;
        var target = Ask("Target for cross weight (RF + LR) / total, %", 0, 0, Stated.Exactly(50)).Estimate;
        return _isOver ? null : new CarModel
        {
            Name = name, WheelbaseMm = wheelbase, FrontTrackMm = front, RearTrackMm = rear, Suspension = new(frontCorner, frontCorner, rearCorner, rearCorner),
            FrontBar = frontBar, RearBar = rearBar, CgHeightMm = cg, SmallestTurn = turn, Targets = new() { CrossWeightPercent = target },
        }.WithUsualSharedUncertainties();
    }

    private (CornerSetup, AntiRollBar?) Axle(string axle)
    {
        var spring = Ask($"{axle} spring rate, N/mm", 0.05, 0, Stated.Guess(60, 25));
        var ratio = Ask($"{axle} motion ratio", 0.025, 0, Stated.Guess(0.85, 0.2));
        var tyre = Ask($"{axle} tyre rate, N/mm", 0.1, 0, Stated.Guess(220, 60));
        var pitch = Ask($"{axle} perch travel for one turn, mm", 0.005, 0, Stated.Guess(2, 0.5));
        var up = Ask($"{axle} thread left upwards, turns", 0, 0, Stated.Exactly(4)).Estimate;
        var down = Ask($"{axle} thread left downwards, turns", 0, 0, Stated.Exactly(4)).Estimate;
        var bar = Ask($"{axle} anti-roll bar at the wheel, N/mm (0: none)", 0.15, 0, Stated.Exactly(0));
        return (new()
        {
            SpringRateNPerMm = spring, MotionRatio = ratio, TyreRateNPerMm = tyre,
            Perch = new() { PitchMmPerTurn = pitch, UpTurnsLeft = up, DownTurnsLeft = down },
        }, bar.Estimate > 0 ? new(bar, Connected: true) : null);
    }

    private string Text(string question)
    {
        while (!_isOver)
            if (Line(question) is { Length: > 0 } answer)
                return answer;
        return "";
    }

    // Where nothing is said about the uncertainty, that of an ordinary measurement is written down, for everyone to see and to correct.
    private Stated Ask(string question, double usualShare, double usualMm, Stated? otherwise = null)
    {
        while (!_isOver)
        {
            var answer = Line(question);
            if (answer.Length == 0 && otherwise is { } guess)
                return guess;
            var parts = answer.Split(["+-", "±"], StringSplitOptions.TrimEntries);
            if (double.TryParse(parts[0], CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) && parts.Length <= 2)
            {
                if (parts.Length == 1)
                    return new(value, usualMm > 0 ? usualMm : usualShare * Math.Abs(value));
                if (double.TryParse(parts[1], CultureInfo.InvariantCulture, out var u) && u >= 0)
                    return new(value, u);
            }

            shell.WriteLine(otherwise is null ? "  A number is needed here, such as 2450 or 2450 +-3." : "  A number, such as 70 or 70 +-3, or Enter when nobody knows.");
        }

        return Stated.Exactly(0);
    }

    private string Line(string question)
    {
        shell.Out.Write($"{question}: ");
        shell.Out.Flush();
        var line = shell.In.ReadLine();
        _isOver = line is null;
        return line?.Trim() ?? "";
    }
}
