using CarOnPads.Physics;
using CarOnPads.Runtime;

namespace CarOnPads.Control;

/// <summary>What the crew does to the car.</summary>
static class CrewCommands
{
    const double LongestSettle = 60;
    const double BounceNewtons = 400; // how hard a crew pushes one corner

    public static IEnumerable<Command> All =>
    [
        new("turn", "Turn a perch; positive turns raise that corner.",
            """{"do":"turn","corner":"LF","turns":1.25}""", Turn),
        new("settle", "Settle the car: by rolling, by bouncing, or both.",
            """{"do":"settle","by":"both","seconds":4}""", Settle),
        new("bounce", "Push the body down at some corners for a while, as hard as said.",
            """{"do":"bounce","corners":["LF","RF"],"newtons":350,"seconds":2}""", Bounce),
        new("lean", "Somebody leans on a corner: for some seconds, or until 0 kg.",
            """{"do":"lean","corner":"RF","kg":20,"seconds":3}""", Lean),
        new("jack", "Jack the car up at all corners or some: body above design height, mm.",
            """{"do":"jack","corners":["LF","RF"],"mm":150}""", Jack),
        new("lower", "Take the jacks away, all or some.",
            """{"do":"lower"}""", Lower),
        new("driver", "Let the driver in or out.",
            """{"do":"driver","in":false}""", Driver),
        new("ballast", "Fix ballast in the car, in place of what there was; 0 kg takes it out.",
            """{"do":"ballast","kg":10,"x_m":0.9,"y_m":-0.3,"z_m":0.2}""", Ballast),
        new("bars", "Connect or disconnect the anti-roll bars.",
            """{"do":"bars","front":false,"rear":false}""", Bars),
    ];

    static Deed Turn(Arguments a)
    {
        var (wheel, turns) = (a.Wheel(), a.Number("turns", -20, 20));
        return (bay, reply) => reply["done_at"] = bay.Rig.Turn(wheel, turns);
    }

    static Deed Settle(Arguments a)
    {
        var by = a.OptionalText("by") ?? "both";
        var seconds = a.Number("seconds", 0.5, LongestSettle, 4);
        if (by is not ("roll" or "bounce" or "both"))
            throw new SimulatorException("CP-205", $"A car is not settled by {by}.", "Settle by roll, bounce or both.");
        return (bay, reply) =>
        {
            reply["done_at"] = bay.Time + seconds;
            if (by == "roll")
                bay.Rig.Roll(seconds);
            else if (by == "bounce")
                bay.Rig.Bounce(Four.Same(1), BounceNewtons, seconds);
            else
                bay.Rig.RollThenBounce(seconds / 2, BounceNewtons, seconds / 2);
        };
    }

    static Deed Bounce(Arguments a)
    {
        var (wheels, newtons, seconds) = (a.Wheels(), a.Number("newtons", 0, 2000, BounceNewtons), a.Number("seconds", 0.1, LongestSettle, 2));
        var shares = new Four();
        foreach (var wheel in wheels)
            shares[wheel] = 1;
        return (bay, reply) => reply["done_at"] = bay.Rig.Bounce(shares, newtons, seconds);
    }

    static Deed Lean(Arguments a)
    {
        var (wheel, kg, seconds) = (a.Wheel(), a.Number("kg", 0, 150), a.OptionalNumber("seconds", 0, LongestSettle));
        return (bay, reply) =>
            bay.Rig.Lean(wheel, kg * bay.Options.Gravity, seconds is { } s ? bay.Time + s : double.PositiveInfinity);
    }

    static Deed Jack(Arguments a)
    {
        var (wheels, mm) = (a.Wheels(), a.Number("mm", 0, 250, 1e3 * Rig.ClearHeight));
        return (bay, reply) => reply["done_at"] = bay.Rig.Jack(wheels, mm * 1e-3);
    }

    static Deed Lower(Arguments a)
    {
        var wheels = a.Wheels();
        return (bay, reply) => reply["done_at"] = bay.Rig.Jack(wheels, null);
    }

    static Deed Driver(Arguments a)
    {
        var aboard = a.Flag("in");
        return (bay, _) => bay.Rig.Seat(aboard);
    }

    static Deed Ballast(Arguments a)
    {
        var mass = new PlacedMass(a.Number("kg", 0, 200), a.Number("x_m", -3, 3, 0), a.Number("y_m", -1.5, 1.5, 0), a.Number("z_m", 0, 2, 0.2));
        return (bay, _) => bay.Rig.Ballast(mass.Kg > 0 ? [mass] : []);
    }

    static Deed Bars(Arguments a)
    {
        var (front, rear) = (a.Flag("front"), a.Flag("rear"));
        return (bay, _) => bay.Rig.Bars(front, rear);
    }
}
