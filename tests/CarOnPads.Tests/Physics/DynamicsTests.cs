using CarOnPads.Physics;

namespace CarOnPads.Tests.Physics;

/// <summary>Free motion against the eigenfrequencies and the energy of textbook vibration theory.</summary>
public class DynamicsTests
{
    static CarDescription Undamped => Damped(0, 0);

    // A quarter car: sprung mass on the wheel rate on the unsprung mass on the tyre. Exact roots of the characteristic
    // equation of two masses and two springs; the simple sqrt(ride rate / mass) / 2 pi lies within 2 % of the lower.
    [Fact]
    public void Heave_has_the_natural_frequency_of_a_quarter_car()
    {
        var rig = new Rig(Undamped, Cars.G, 1);
        var at = rig.Chassis.Stations[0];
        var sprung = 250 - at.UnsprungMass;
        Assert.Equal(QuarterCar(sprung, at).Low, Frequency(rig, m => m.Heave, (ref m) => m.HeaveRate = 0.05), 0.005);
        var simple = Math.Sqrt(Cars.RideRate(at) / sprung) / Math.Tau;
        Assert.InRange(QuarterCar(sprung, at).Low / simple, 0.98, 1.02);
    }

    [Fact]
    public void Pitch_and_roll_have_the_frequencies_that_their_inertias_give()
    {
        var car = Undamped;
        var at = new Chassis(car, Cars.G).Stations[0];
        var pitch = QuarterCar(car.PitchInertiaKgM2 / (4 * at.X * at.X), at).Low;
        var roll = QuarterCar(car.RollInertiaKgM2 / (4 * at.Y * at.Y), at).Low;
        Assert.Equal(pitch, Frequency(new Rig(car, Cars.G, 1), m => m.Pitch, (ref m) => m.PitchRate = 0.03), 0.02);
        Assert.Equal(roll, Frequency(new Rig(car, Cars.G, 1), m => m.Roll, (ref m) => m.RollRate = 0.03), 0.02);
    }

    [Fact]
    public void The_demo_car_rocks_between_one_and_four_hertz_and_hops_between_eight_and_twenty()
    {
        var chassis = new Chassis(Cars.Heron, Cars.G);
        foreach (var at in chassis.Stations)
        {
            var (low, high) = QuarterCar(at.Preload / Cars.G, at);
            Assert.InRange(low, 1, 4);
            Assert.InRange(high, 8, 20);
        }
    }

    [Fact]
    public void Without_damping_the_energy_stays()
    {
        var rig = Kicked(Undamped);
        var (start, floor) = (Energy(rig), RestEnergy(rig));
        Cars.Run(rig, 10);
        Assert.InRange((Energy(rig) - floor) / (start - floor), 0.97, 1.03);
    }

    [Fact]
    public void With_damping_the_energy_only_falls_until_the_car_rests()
    {
        var rig = Kicked(Damped(1500, 1500));
        var (start, floor) = (Energy(rig), RestEnergy(rig));
        var last = start;
        for (var i = 0; i < 60; i++)
        {
            Cars.Run(rig, 0.1);
            var now = Energy(rig);
            Assert.True(now <= last + 1e-9 * Math.Abs(floor), $"{now} J after {last} J");
            last = now;
        }

        Assert.InRange((last - floor) / (start - floor), -1e-6, 1e-6);
    }

    static CarDescription Damped(double damper, double tyre)
    {
        var axle = Cars.Square.Front with { BumpNsPerM = damper, ReboundNsPerM = damper, TyreNsPerM = tyre / 4 };
        return Cars.Square with { Front = axle, Rear = axle };
    }

    static Rig Kicked(CarDescription car)
    {
        var rig = new Rig(car, Cars.G, 1);
        rig.Nudge((ref m) => (m.HeaveRate, m.PitchRate, m.RollRate) = (0.08, 0.05, 0.06));
        return rig;
    }

    static double Frequency(Rig rig, Func<Motion, double> coordinate, Rig.Nudging kick)
    {
        var rest = coordinate(rig.Motion);
        rig.Nudge(kick);
        double first = 0, last = 0, before = 0;
        var crossings = -1;
        for (var i = 0; i < 40000; i++)
        {
            rig.Advance();
            var now = coordinate(rig.Motion) - rest;
            if (before < 0 && now >= 0)
            {
                last = rig.Time - CarDynamics.Step * now / (now - before);
                if (++crossings == 0)
                    first = last;
            }

            before = now;
        }

        return crossings / (last - first);
    }

    static (double Low, double High) QuarterCar(double sprung, WheelStation at)
    {
        double k = at.WheelRate, t = at.TyreRate, m = sprung, u = at.UnsprungMass;
        var b = (k * u + (k + t) * m) / (m * u);
        var root = Math.Sqrt(b * b - 4 * k * t / (m * u));
        return (Math.Sqrt((b - root) / 2) / Math.Tau, Math.Sqrt((b + root) / 2) / Math.Tau);
    }

    static double RestEnergy(Rig rig) => Energy(new Rig(rig.Chassis.Description, Cars.G, 1));

    // Symmetric car: no coupling between heave, pitch and roll in the kinetic energy.
    static double Energy(Rig rig)
    {
        var (m, car) = (rig.Motion, rig.Chassis.Description);
        var sprung = car.MassKg - 4 * car.Front.UnsprungKg;
        var lean = Cars.G * rig.Chassis.UnsprungHeightMoment;
        var sum = sprung * (m.HeaveRate * m.HeaveRate / 2 + Cars.G * m.Heave)
            + car.PitchInertiaKgM2 * m.PitchRate * m.PitchRate / 2
            + car.RollInertiaKgM2 * m.RollRate * m.RollRate / 2
            - lean * (m.Pitch * m.Pitch + m.Roll * m.Roll) / 2;
        for (var i = 0; i < 4; i++)
        {
            var at = rig.Chassis.Stations[i];
            var spring = at.Preload + at.WheelRate * (m.Hub[i] - at.Rest - m.BodyAt(at.X, at.Y));
            sum += spring * spring / (2 * at.WheelRate)
                + at.TyreRate * m.Hub[i] * m.Hub[i] / 2
                + at.UnsprungMass * (m.HubRate[i] * m.HubRate[i] / 2 + Cars.G * m.Hub[i]);
        }

        return sum;
    }
}
